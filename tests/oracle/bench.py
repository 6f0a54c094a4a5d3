"""The crate and the oracle's library on the same members, in one run.

    python bench.py        needs numpy, scipy and cargo

Three times are told apart, since the oracle is written to be plain, not fast: scipy's banded solver alone, on equations
that stand ready; the same with the equations set up in Python; and all of it with reactions and extremes. The crate's
time is that of the whole way from the member and its loads to all extremes, of which its solver is a small part.
"""

import random
import re
import subprocess
import time
from pathlib import Path

import numpy
import scipy
from scipy.linalg import solve_banded

import continuous_members as oracle


def shortest(run, times):
    best = float("inf")
    for _ in range(times):
        start = time.perf_counter()
        run()
        best = min(best, time.perf_counter() - start)
    return best


def main():
    members = oracle.standing_members()
    ready = [(*oracle.System(member).build().banded(), oracle.System(member).build().right) for member in members]
    ready = [(bands, band, numpy.array(right)) for bands, band, right in ready]

    def solver_alone():
        for bands, band, right in ready:
            solve_banded(bands, band, right, check_finite=False)

    def with_equations():
        for member in members:
            oracle.solve(oracle.System(member).build())

    def everything():
        dice = random.Random(1)
        for member in members:
            system = oracle.System(member).build()
            oracle.reading(system, system.solution(oracle.solve(system)), dice)

    print(f"numpy {numpy.__version__}, scipy {scipy.__version__}; {len(members)} members")
    times = {
        "scipy's banded solver alone": shortest(solver_alone, 5),
        "with the equations set up in Python": shortest(with_equations, 2),
        "with reactions and extremes": shortest(everything, 2),
    }
    root = Path(__file__).resolve().parents[2]
    command = ["cargo", "bench", "--bench", "statics"]
    output = subprocess.run(command, cwd=root, check=True, capture_output=True, text=True).stdout
    print(output.strip())
    rate = float(re.search(r"^oracle_members_per_second (\d+)", output, re.M).group(1))
    for what, seconds in times.items():
        theirs = len(members) / seconds
        print(f"{what}: {theirs:,.0f} members a second; the crate, all the way: {rate:,.0f}; ratio {rate / theirs:,.1f}")


if __name__ == "__main__":
    main()
