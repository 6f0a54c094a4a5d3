"""Random members on supports, solved from the differential equations of the bent member by collocation.

Independent of the crate: no stiffness or flexibility of an element is written down here. Between two places where
anything changes, deflection, slope of the section, moment and shear are polynomials; they must satisfy

    w' = s + V / GA      s' = -M / EI      M' = V      V' = -q

at collocation points, and the jumps that supports, joints and loads prescribe in between. All of it is one banded
system for numpy and scipy. Extremes are numpy's polynomial roots. Inches and pounds; signs as in the crate.

    python continuous_members.py > ../data/continuous_members.json
"""

import json
import platform
import random

import numpy
import scipy
from numpy.polynomial import Polynomial
from scipy.linalg import solve_banded

N_MEMBERS = 320
N_LOOSE = 60
DEGREE = 6  # the deflection under a load that runs straight is of the fifth degree
W, S, M, V = range(4)
N = 4 * (DEGREE + 1)


# ---- random members -------------------------------------------------------------------------------------------------

def sixteenths(dice, low, high):
    return dice.randint(round(low * 16), round(high * 16)) / 16


def a_member(dice, loose=False):
    spans = [sixteenths(dice, 48, 288) for _ in range(dice.choice([1, 1, 2, 2, 3, 3, 4, 5, 6]))]
    left = sixteenths(dice, 12, 72) if dice.random() < 0.3 else 0
    right = sixteenths(dice, 12, 72) if dice.random() < 0.3 else 0
    places = [left + sum(spans[:i]) for i in range(len(spans) + 1)]
    length = places[-1] + right
    props = []
    for at in places:
        kind, rate = "pinned", None
        if dice.random() < (0.15 if at in (0, length) else 0.04):
            kind = "fixed"
        elif dice.random() < 0.15:
            kind, rate = "spring", dice.choice([800, 5000, 20000, 150000])
        props.append({"at": at, "hold": kind, "rate": rate, "settlement": 0})
    if dice.random() < 0.25:
        dice.choice(props)["settlement"] = dice.randint(1, 12) / 16
    if dice.random() < 0.06:
        kept = dice.choice(props)
        kept.update(hold="fixed", rate=None)
        props = [kept]
    if dice.random() < 0.15:
        dice.shuffle(props)

    hinges = []
    if len(spans) > 1 or loose:
        for _ in range(dice.choice([0, 0, 1, 1, 2]) + loose):
            inside = sixteenths(dice, 1, length - 1)
            hinges.append(dice.choice(places[1:-1]) if dice.random() < 0.2 and len(places) > 2 else inside)
    if loose and dice.random() < 0.5 and len(props) > 1:
        props.pop(dice.randrange(len(props)))
    hinges = sorted(set(hinges) - {0, length})

    rigidity = dice.choice([3e7, 1.5e8, 4.8e8, 1.9e9])
    shear = rigidity * dice.choice([0.002, 0.01, 0.04]) if dice.random() < 0.35 else None
    ends = sorted({sixteenths(dice, 6, length - 6) for _ in range(dice.choice([0, 0, 1, 2, 3]))}) + [length]
    stretches = [
        {"to": to, "rigidity": rigidity * dice.choice([0.5, 1, 1, 2, 3.5]), "shear": shear} for to in ends
    ]

    pushes = []
    for _ in range(dice.randint(1, 6)):
        kind = dice.choice(["full", "partial", "linear", "point", "point", "couple"])
        sign = -1 if dice.random() < 0.1 else 1
        if kind == "point":
            at = dice.choice(places) if dice.random() < 0.1 else sixteenths(dice, 0, length)
            pushes.append({"at": at, "force": sign * dice.randint(100, 6000)})
        elif kind == "couple":
            at = dice.choice([0, length]) if dice.random() < 0.2 else sixteenths(dice, 1, length - 1)
            if at not in hinges:
                pushes.append({"at": at, "moment": dice.choice([-1, 1]) * dice.randint(500, 40000)})
        else:
            a, b = sorted([sixteenths(dice, 0, length), sixteenths(dice, 0, length)])
            if kind == "full" or b - a < 1:
                a, b = 0, length
            start = sign * dice.randint(20, 900)
            end = start if kind != "linear" else sign * dice.choice([0, dice.randint(-200, 900)])
            pushes.append({"from": a, "to": b, "start": start, "end": end})
    return {"length": length, "stretches": stretches, "props": props, "hinges": hinges, "pushes": pushes}


# ---- the equations --------------------------------------------------------------------------------------------------

def breaks_of(member):
    places = {0, member["length"], *member["hinges"]}
    places |= {prop["at"] for prop in member["props"]} | {stretch["to"] for stretch in member["stretches"]}
    for push in member["pushes"]:
        places |= {push["at"]} if "at" in push else {push["from"], push["to"]}
    return sorted(places)


def load_on(member, a, b):
    """The line load at both ends of an interval on which it runs straight, pounds an inch."""
    at_a = at_b = 0.0
    for push in member["pushes"]:
        if "from" in push and push["from"] <= a and b <= push["to"] and push["from"] < push["to"]:
            grow = (push["end"] - push["start"]) / (push["to"] - push["from"])
            at_a += (push["start"] + grow * (a - push["from"])) / 12
            at_b += (push["start"] + grow * (b - push["from"])) / 12
    return at_a, at_b


POINTS = (1 - numpy.cos(numpy.pi * (numpy.arange(DEGREE) + 0.5) / DEGREE)) / 2
POWERS = numpy.arange(DEGREE + 1)
AT = POINTS[:, None] ** POWERS
SLOPE = POWERS * POINTS[:, None] ** numpy.maximum(POWERS - 1, 0)


class System:
    """All equations of one member; unknowns are made of the size of one by these scales."""

    def __init__(self, member):
        self.member = member
        self.breaks = breaks_of(member)
        self.n = N * (len(self.breaks) - 1)
        mean = member["length"] / (len(self.breaks) - 1)
        rigidity = sum(stretch["rigidity"] for stretch in member["stretches"]) / len(member["stretches"])
        moment = 1e5
        turn = moment * mean / rigidity
        self.scale = [turn * mean, turn, moment, moment / mean]
        self.rows, self.right = [], []

    def column(self, interval, quantity):
        return N * interval + (DEGREE + 1) * quantity

    def value(self, interval, quantity, at_end):
        column = self.column(interval, quantity)
        if at_end:
            return [(column + power, self.scale[quantity]) for power in range(DEGREE + 1)]
        return [(column, self.scale[quantity])]

    def equation(self, entries, right, size):
        self.rows.append([(column, value / size) for column, value in entries])
        self.right.append(right / size)

    def stretch_at(self, a):
        return next(stretch for stretch in self.member["stretches"] if a < stretch["to"])

    def build(self):
        self.place(0)
        for interval, (a, b) in enumerate(zip(self.breaks, self.breaks[1:])):
            self.interval(interval, a, b)
            self.place(interval + 1)
        return self

    def interval(self, i, a, b):
        stretch = self.stretch_at(a)
        length = b - a
        slip = 1 / stretch["shear"] if stretch["shear"] else 0.0
        load = load_on(self.member, a, b)
        for k, t in enumerate(POINTS):
            q = load[0] + (load[1] - load[0]) * t
            for quantity, terms, right in [
                (W, [(S, 1.0), (V, slip)], 0.0),
                (S, [(M, -1 / stretch["rigidity"])], 0.0),
                (M, [(V, 1.0)], 0.0),
                (V, [], -q),
            ]:
                column = self.column(i, quantity)
                entries = [(column + p, SLOPE[k, p] / length * self.scale[quantity]) for p in range(1, DEGREE + 1)]
                for other, factor in terms:
                    column = self.column(i, other)
                    entries += [(column + p, -factor * AT[k, p] * self.scale[other]) for p in range(DEGREE + 1)]
                self.equation(entries, right, self.scale[quantity] / length)

    def place(self, index):
        """The conditions where two intervals meet, or at an end."""
        at = self.breaks[index]
        left = index - 1 if index > 0 else None
        right = index if index < len(self.breaks) - 1 else None
        prop = next((prop for prop in self.member["props"] if prop["at"] == at), None)
        is_hinge = at in self.member["hinges"]
        couple = sum(push["moment"] for push in self.member["pushes"] if "moment" in push and push["at"] == at)
        force = sum(push["force"] for push in self.member["pushes"] if "force" in push and push["at"] == at)

        def jump(quantity):
            entries = [] if right is None else self.value(right, quantity, False)
            if left is not None:
                entries = entries + [(column, -value) for column, value in self.value(left, quantity, True)]
            return entries

        def here(quantity):
            return self.value(left, quantity, True) if right is None else self.value(right, quantity, False)

        if left is not None and right is not None:
            self.equation(jump(W), 0.0, self.scale[W])
        # slope and moment
        if is_hinge:
            for interval, at_end in [(left, True), (right, False)]:
                if interval is not None:
                    self.equation(self.value(interval, M, at_end), 0.0, self.scale[M])
        elif prop and prop["hold"] == "fixed":
            for interval, at_end in [(left, True), (right, False)]:
                if interval is not None:
                    self.equation(self.value(interval, S, at_end), 0.0, self.scale[S])
        else:
            self.equation(jump(M), couple, self.scale[M])
            if left is not None and right is not None:
                self.equation(jump(S), 0.0, self.scale[S])
        # deflection and shear
        if prop and prop["hold"] == "spring":
            rate = prop["rate"]
            entries = jump(V) + [(column, -rate * value) for column, value in here(W)]
            size = max(self.scale[V], rate * self.scale[W])
            self.equation(entries, -force - rate * prop["settlement"], size)
        elif prop:
            self.equation(here(W), prop["settlement"], self.scale[W])
        else:
            self.equation(jump(V), -force, self.scale[V])

    def banded(self):
        below = max(row - column for row, entries in enumerate(self.rows) for column, _ in entries)
        above = max(column - row for row, entries in enumerate(self.rows) for column, _ in entries)
        band = numpy.zeros((below + above + 1, self.n))
        for row, entries in enumerate(self.rows):
            for column, value in entries:
                band[above + row - column, column] += value
        return (below, above), band

    def dense(self):
        matrix = numpy.zeros((self.n, self.n))
        for row, entries in enumerate(self.rows):
            for column, value in entries:
                matrix[row, column] += value
        return matrix

    def is_loose(self):
        """Some motion costs no force: None where the smallest singular value leaves it open."""
        matrix = self.dense()
        values = numpy.linalg.svd(matrix / numpy.linalg.norm(matrix, axis=1)[:, None], compute_uv=False)
        if values[-1] < 1e-13 * values[0]:
            return True
        return False if values[-1] > 1e-9 * values[0] else None

    def solution(self, x):
        return [
            [
                Polynomial(x[self.column(i, quantity):][: DEGREE + 1] * self.scale[quantity])
                for quantity in range(4)
            ]
            for i in range(len(self.breaks) - 1)
        ]


# ---- what is read off -----------------------------------------------------------------------------------------------

def candidates(polynomial, change):
    inner = [
        root.real for root in change.roots() if abs(root.imag) < 1e-9 and 0 < root.real < 1
    ] if numpy.any(numpy.abs(change.coef) > 0) else []
    return [(float(polynomial(t)), t) for t in [0.0, 1.0, *inner]]


def extremes(system, fields):
    every = {W: [], M: [], V: []}
    for (a, b), field in zip(zip(system.breaks, system.breaks[1:]), fields):
        for quantity in every:
            polynomial = field[quantity]
            every[quantity] += [(v, a + t * (b - a)) for v, t in candidates(polynomial, polynomial.deriv())]
    return {
        "sagging": max(every[M], key=lambda pair: pair[0]),
        "hogging": min(every[M], key=lambda pair: pair[0]),
        "shear": max(((abs(v), x) for v, x in every[V]), key=lambda pair: pair[0]),
        "down": max(every[W], key=lambda pair: pair[0]),
        "up": min(every[W], key=lambda pair: pair[0]),
    }


def jump_at(system, fields, quantity, at, applied):
    index = system.breaks.index(at)
    left = fields[index - 1][quantity](1.0) if index > 0 else 0.0
    right = fields[index][quantity](0.0) if index < len(fields) else 0.0
    return right - left + applied


def reading(system, fields, dice):
    member = system.member
    reactions, fixed = [], []
    for prop in member["props"]:
        at = prop["at"]
        force = sum(push["force"] for push in member["pushes"] if "force" in push and push["at"] == at)
        couple = sum(push["moment"] for push in member["pushes"] if "moment" in push and push["at"] == at)
        reactions.append(jump_at(system, fields, V, at, force))
        is_fixed = prop["hold"] == "fixed" and at not in member["hinges"]
        fixed.append(jump_at(system, fields, M, at, -couple) if is_fixed else 0.0)
    stations = []
    for _ in range(4):
        at = sixteenths(dice, 0.0625, member["length"] - 0.0625)
        if at in system.breaks:
            continue
        i = max(k for k, x in enumerate(system.breaks) if x < at)
        t = (at - system.breaks[i]) / (system.breaks[i + 1] - system.breaks[i])
        stations.append([at] + [float(fields[i][quantity](t)) for quantity in (M, V, W)])
    return {"reactions": reactions, "fixed": fixed, "stations": stations, **extremes(system, fields)}


def rounded(value):
    if isinstance(value, dict):
        return {key: rounded(item) for key, item in value.items()}
    if isinstance(value, (list, tuple)):
        return [rounded(item) for item in value]
    if isinstance(value, (float, numpy.floating)):
        return float(f"{value:.9g}")
    return value


def solve(system):
    bands, band = system.banded()
    return solve_banded(bands, band, numpy.array(system.right))


def standing_members():
    dice = random.Random(20260101)
    members = []
    while len(members) < N_MEMBERS:
        member = a_member(dice)
        if member["pushes"] and System(member).build().is_loose() is False:
            members.append(member)
    return members


def loose_members():
    dice = random.Random(20260102)
    members = []
    while len(members) < N_LOOSE:
        member = a_member(dice, loose=True)
        member["pushes"] = []
        system = System(member)
        try:
            system.build()
        except StopIteration:
            continue
        # Half of them stand after all: both answers are to be told apart.
        loose = system.is_loose()
        if loose is None or (not loose and sum(not is_loose for _, is_loose in members) >= N_LOOSE // 2):
            continue
        if loose and sum(is_loose for _, is_loose in members) >= N_LOOSE // 2:
            continue
        members.append((member, loose))
    return members


def main():
    dice = random.Random(20260103)
    print('{"meta":', json.dumps({
        "method": "collocation of the first-order differential equations, scipy.linalg.solve_banded; numpy roots",
        "script": "tests/oracle/continuous_members.py",
        "units": "inches and pounds; line loads in pounds a foot; `up` is the least deflection",
        "python": platform.python_version(), "numpy": numpy.__version__, "scipy": scipy.__version__,
    }), ',\n"members": [')
    members = standing_members()
    for number, member in enumerate(members):
        system = System(member).build()
        member["expected"] = reading(system, system.solution(solve(system)), dice)
        print(json.dumps(rounded(member), separators=(",", ":")) + ("," if number + 1 < len(members) else ""))
    print('],\n"loose": [')
    members = loose_members()
    for number, (member, loose) in enumerate(members):
        member["is_loose"] = loose
        print(json.dumps(rounded(member), separators=(",", ":")) + ("," if number + 1 < len(members) else ""))
    print("]}")


if __name__ == "__main__":
    main()
