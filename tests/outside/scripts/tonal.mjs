// Answers questions with tonal: each line of stdin is a JSON list of {ask, ...}, each line of stdout the list of answers.
// Run from a folder whose node_modules holds tonal 6.4.3.
import { createRequire } from "node:module";
import { createInterface } from "node:readline";
const require = createRequire(process.cwd() + "/");
const { Chord, Interval, Key, Note, Progression, Scale } = require("tonal");

const answers = {
  chord: (q) => Chord.get(q.symbol).notes,
  scale: (q) => Scale.get(`${q.tonic} ${q.mode}`).notes,
  signature: (q) => Key.majorKey(q.tonic).alteration,
  up: (q) => Note.transpose(q.note, q.interval),
  distance: (q) => Interval.distance(q.from, q.to),
  semitones: (q) => Interval.semitones(q.interval),
  transposeChord: (q) => Chord.transpose(q.symbol, q.interval),
  roman: (q) => Progression.toRomanNumerals(q.tonic, [q.symbol])[0],
  midi: (q) => Note.midi(q.note),
};

for await (const line of createInterface({ input: process.stdin })) {
  console.log(JSON.stringify(JSON.parse(line).map((q) => answers[q.ask](q))));
}
