"""roughness.tsv: the roughness of two plucked strings, by the formula of Sethares 1993, computed with numpy.

W. A. Sethares, "Local consonance and the relationship between timbre and scale", JASA 94 (3), 1993; constants a = 3.5,
b = 5.75, d* = 0.24, s1 = 0.021, s2 = 19, amplitudes multiplied. Spectrum: eight harmonics |sin(k pi / 5)| / k, summing to 1.
Only the partials of one note against those of the other are counted.
"""

from pathlib import Path

import numpy as np

FIXTURES = Path(__file__).resolve().parents[1] / "fixtures"


def partials(midi):
    k = np.arange(1, 9)
    amplitude = np.abs(np.sin(k * np.pi / 5)) / k
    return 440 * 2 ** ((midi - 69) / 12) * k, amplitude / amplitude.sum()


def roughness(one, other):
    (f, v), (g, w) = partials(one), partials(other)
    low, apart = np.minimum.outer(f, g), np.abs(np.subtract.outer(f, g))
    s = 0.24 / (0.021 * low + 19)
    return float((np.multiply.outer(v, w) * (np.exp(-3.5 * s * apart) - np.exp(-5.75 * s * apart))).sum())


with open(FIXTURES / "roughness.tsv", "w", encoding="utf-8", newline="\n") as table:
    table.write("one\tother\troughness\n")
    for one in (43, 55, 62, 69, 76):
        for up in range(-12, 13):
            table.write(f"{one}\t{one + up}\t{roughness(one, one + up):.12f}\n")
