// Answers a list of questions with tonal: JSON in on stdin, JSON out on stdout.
// Each question is {ask, ...}; run from a folder whose node_modules holds tonal 6.4.3.
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
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

const questions = JSON.parse(readFileSync(0, "utf8"));
console.log(JSON.stringify(questions.map((q) => answers[q.ask](q))));
