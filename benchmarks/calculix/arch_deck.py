"""Writes one full-arch problem as a CalculiX deck, and reads back the forces that ccx printed.

The problem, chosen because both programs can state it exactly: a round steel wire rests on a half ellipse in fourteen
slots. At each slot one fixed point of the wire glides without friction along the slot's axis and is free to turn. One
tooth is then moved off its rest place. Geometry: "arch_geometry" in mechanics-benchmarks.json. Units mm, N, MPa.

How CalculiX is told: quadratic beams B32R (ccx expands them to 20-node bricks); at each slot node the axes are turned
into the slot's (*TRANSFORM), the two directions across the slot are prescribed (*BOUNDARY), the direction along it and
all rotations stay free. No further support is needed: a curved wire led at fourteen places cannot slide as a whole.
"""
import math

SLOT_AXES = ('along', 'outward', 'third')       # local directions 1, 2, 3 of a slot node


def write_deck(path, geometry, case, beams_per_span, increments):
    """geometry, case: entries of the benchmark file. Returns nothing; the deck stands at path."""
    slots = geometry['slots_point']
    arcs = slot_positions(geometry)
    node_arcs = []
    for start, end in zip(arcs, arcs[1:]):      # two node steps a beam: end, middle, end
        node_arcs += [start + (end - start) * i / (2 * beams_per_span) for i in range(2 * beams_per_span)]
    node_arcs.append(arcs[-1])
    slot_nodes = [1 + 2 * beams_per_span * k for k in range(len(slots))]

    lines = wire_lines(geometry, case, node_arcs) + slot_lines(slots, slot_nodes)
    lines += step_lines(geometry, case, slot_nodes, increments)
    with open(path, 'w') as deck:
        deck.write('\n'.join(lines) + '\n')


def wire_lines(geometry, case, node_arcs):
    point, speed = ellipse(*geometry['curve']['parameters'])
    lines = ['*HEADING', 'A wire that glides along the slots of an arch', '*NODE, NSET=ALL']
    lines += ['%d, %.12g, %.12g, %.12g' % ((i + 1,) + point(parameter_at(speed, arc)))
              for i, arc in enumerate(node_arcs)]
    lines.append('*ELEMENT, TYPE=B32R, ELSET=WIRE')
    lines += ['%d, %d, %d, %d' % (e + 1, 2 * e + 1, 2 * e + 2, 2 * e + 3) for e in range(len(node_arcs) // 2)]
    diameter = case['section']['diameter_mm']
    return lines + [
        '*MATERIAL, NAME=STEEL', '*ELASTIC', '%.9g, %.9g' % (case['young_MPa'], case['poisson']),
        '*BEAM SECTION, ELSET=WIRE, MATERIAL=STEEL, SECTION=CIRC', '%.9g, %.9g' % (diameter, diameter), '0., 0., 1.']


def slot_lines(slots, slot_nodes):
    lines = ['*NSET, NSET=SLOTS'] + ['%d,' % node for node in slot_nodes]
    for node, slot in zip(slot_nodes, slots):
        axes = ', '.join('%.12g' % v for v in slot['along'] + slot['outward'])
        lines += ['*NSET, NSET=SLOT%d' % node, '%d,' % node, '*TRANSFORM, NSET=SLOT%d, TYPE=R' % node, axes]
    return lines + ['*BOUNDARY'] + ['%d, 2, 3' % node for node in slot_nodes]


def step_lines(geometry, case, slot_nodes, increments):
    moved = slot_nodes[geometry['teeth'].index(case['tooth'])]
    offset = case['offset']
    jaw = 1 if geometry['jaw'] == 'upper' else -1
    outward, third = offset.get('labial_mm', 0.0), jaw * offset.get('occlusal_mm', 0.0)
    # DIRECT keeps the increments as asked for; a single one may be cut if it does not converge.
    static = '*STATIC, DIRECT' if increments > 1 else '*STATIC'
    return ['*STEP, NLGEOM, INC=200', static, '%.9g, 1.' % (1 / increments),
            '*BOUNDARY', '%d, 2, 2, %.12g' % (moved, outward), '%d, 3, 3, %.12g' % (moved, third),
            '*NODE PRINT, NSET=SLOTS, GLOBAL=YES, FREQUENCY=1000', 'RF', '*END STEP']


def read_forces(path, geometry):
    """Force of the wire on each tooth at the end of the step: {tooth: (labial, occlusal, along)} [N].

    ccx prints the force of the support on the wire; the sign is turned here. Its manual warns that RF may be wrong
    where an axis is turned, so two laws are checked before a figure is believed: the forces of the whole wire balance,
    and none acts along a slot in which the wire glides.
    """
    with open(path) as dat:
        last_block = dat.read().split('forces (fx,fy,fz)')[-1]
    rows = [line.split() for line in last_block.splitlines()[1:]]
    forces = [[-float(v) for v in row[1:]] for row in rows if len(row) == 4]
    slots = geometry['slots_point']
    if len(forces) != len(slots):
        raise ValueError('%s holds %d forces for %d slots: the solution did not finish' %
                         (path, len(forces), len(slots)))

    largest = max(length(force) for force in forces)
    imbalance = length([sum(axis) for axis in zip(*forces)])
    drag = max(abs(dot(force, slot['along'])) for force, slot in zip(forces, slots))
    if imbalance > 1e-4 * largest or drag > 1e-4 * largest:
        raise ValueError('the forces of ccx cannot be trusted: out of balance by %.2g N, along a slot %.2g N' %
                         (imbalance, drag))

    jaw = 1 if geometry['jaw'] == 'upper' else -1
    return {slot['tooth']: (dot(force, slot['outward']), jaw * dot(force, cross(slot['along'], slot['outward'])),
                            dot(force, slot['along']))
            for force, slot in zip(forces, slots)}


def slot_positions(geometry):
    """Arc lengths of the slots from the middle of the arch, right to left [mm]."""
    half = geometry['slot_arc_positions_from_midline_mm']
    return [-s for s in reversed(half)] + half


def ellipse(a, b):
    """Centre line x = a cos t, y = b sin t from the patient's right (t = 0) to the left, and its speed ds/dt."""
    def point(t):
        return a * math.cos(t), b * math.sin(t), 0.0

    def speed(t):
        return math.hypot(a * math.sin(t), b * math.cos(t))
    return point, speed


def parameter_at(speed, arc, middle=math.pi / 2):
    """The t at which the arc length from the middle of the arch is `arc`: Newton's method."""
    t = middle
    for _ in range(50):
        step = (arc - integral(speed, middle, t)) / speed(t)
        t += step
        if abs(step) < 1e-13:
            return t
    raise ArithmeticError('the curve has no point at arc length %g mm' % arc)


def integral(f, low, high, pieces=64):
    """Composite three-point Gauss quadrature."""
    half = (high - low) / pieces / 2
    middles = [low + (2 * i + 1) * half for i in range(pieces)]
    rule = ((-math.sqrt(0.6), 5 / 9), (0.0, 8 / 9), (math.sqrt(0.6), 5 / 9))
    return half * sum(weight * f(m + x * half) for m in middles for x, weight in rule)


def dot(a, b):
    return sum(x * y for x, y in zip(a, b))


def cross(a, b):
    return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]


def length(a):
    return math.sqrt(dot(a, a))
