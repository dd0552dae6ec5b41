"""Solves the same full arch with CalculiX and with Archwright in one run; prints times, their ratio, and the forces.

    python3 compare.py OUR_PROGRAM          (benchmarks/calculix/run builds it and calls this)

OUR_PROGRAM is the benchmark program, called as `OUR_PROGRAM --calculix-case CASE`; it prints one JSON document.
Both run on one thread. CalculiX is timed as a process, reading its deck included: it solves one deck a process; the
best of three runs counts, ours is a median, so that a busy machine does not flatter us.
Ours is timed in the process (a new engager, prepared and engaged, nothing kept from the solve before) and, in a row of
its own, as a process too: then most of the time is the start of the runtime, not the solve.
"""
import json
import os
import pathlib
import platform
import re
import statistics
import subprocess
import sys
import tempfile
import time

import arch_deck

HERE = pathlib.Path(__file__).resolve().parent
BENCHMARKS = HERE.parents[1] / 'tests' / 'Archwright.Mechanics.Tests' / 'mechanics-benchmarks.json'
CASES = ('arch-point-13-high', 'arch-point-13-labial')      # their hold is replaced by gliding
MESHES = ((4, 1), (8, 1), (8, 10), (16, 1), (16, 10))       # beams a span, increments
REFERENCE_MESH = (16, 10)                                   # what the forces are compared with
RATIO_MESH = (8, 1)                                         # the cheapest within 0.1 % of it: the fair opponent
REPEATS = 3
ONE_THREAD = dict(os.environ, OMP_NUM_THREADS='1')


def main():
    if len(sys.argv) != 2:
        sys.exit('usage: python3 compare.py OUR_PROGRAM')
    benchmarks = json.loads(BENCHMARKS.read_text())
    print_machine()
    worst = 0.0
    for case_id in CASES:
        entry = next(a for a in benchmarks['arch'] if a['id'] == case_id)
        geometry = benchmarks['arch_geometry'][entry['geometry']]
        worst = max(worst, compare(case_id, geometry, entry['inputs'], sys.argv[1]))
    if worst > 0.01:
        sys.exit('The forces differ by more than 1 %% of the largest: %.2f %%.' % (100 * worst))


def compare(case_id, geometry, case, our_program):
    """Prints one case; returns the largest difference of a force as a share of the largest force."""
    print('\n%s: tooth %s moved by %s, every wire point gliding along its slot' %
          (case_id, case['tooth'], ', '.join('%s %g' % kv for kv in case['offset'].items())))
    solved = {}
    for mesh in MESHES:
        solved[mesh] = solve_with_calculix(geometry, case, *mesh)
        seconds, forces = solved[mesh]
        print('  CalculiX, %2d beams a span, %2d increment%s  %9.1f ms   largest force %.4f N' %
              (mesh + (' ' if mesh[1] == 1 else 's', 1e3 * seconds, largest(forces))))
    ours, process_seconds = solve_with_ours(our_program, case_id)
    forces = {slot['tooth']: (slot['labial_N'], slot['occlusal_N'], 0.0) for slot in ours['slots']}
    print('  Archwright, cold                          %9.3f ms   largest force %.4f N' %
          (ours['cold_ms'], largest(forces)))
    print('  Archwright, warm (the tooth 2 %% nearer to rest) %10.3f ms' % ours['warm_ms'])
    print('  Archwright, one solve a process, its start included %.0f ms' % (1e3 * process_seconds))

    opponent, reference = solved[RATIO_MESH][0], solved[REFERENCE_MESH][1]
    difference = print_forces(forces, reference)
    print('  largest difference %.3f %% of the largest force' % (100 * difference))
    print('  CalculiX (%d beams a span, %d increment) takes %.0f times as long as Archwright cold; '
          'process against process %.1f times' %
          (RATIO_MESH + (1e3 * opponent / ours['cold_ms'], opponent / process_seconds)))
    return difference


def solve_with_calculix(geometry, case, beams, increments):
    """Shortest wall-clock time of the process [s], and the forces."""
    with tempfile.TemporaryDirectory() as folder:
        arch_deck.write_deck(os.path.join(folder, 'arch.inp'), geometry, case, beams, increments)
        times = []
        for _ in range(REPEATS):
            start = time.perf_counter()
            done = subprocess.run(['ccx', '-i', 'arch'], cwd=folder, env=ONE_THREAD, capture_output=True, text=True)
            times.append(time.perf_counter() - start)
            if done.returncode != 0 or 'Job finished' not in done.stdout:
                sys.exit('ccx did not finish (exit %d):\n%s' % (done.returncode, done.stdout[-2000:]))
        return min(times), arch_deck.read_forces(os.path.join(folder, 'arch.dat'), geometry)


def solve_with_ours(program, case_id):
    """What our program printed after many solves, and the median time of a process that solves once [s]."""
    once = []
    for _ in range(REPEATS):
        start = time.perf_counter()
        run_ours(program, case_id, '--once')
        once.append(time.perf_counter() - start)
    return json.loads(run_ours(program, case_id)), statistics.median(once)


def run_ours(program, case_id, *more):
    done = subprocess.run([program, '--calculix-case', case_id, *more], env=ONE_THREAD, capture_output=True, text=True)
    if done.returncode != 0:
        sys.exit('%s failed (exit %d):\n%s%s' % (program, done.returncode, done.stdout, done.stderr))
    return done.stdout


def print_forces(ours, theirs):
    scale = largest(theirs)
    worst = 0.0
    print('  tooth    labial N: CalculiX      ours     occlusal N: CalculiX      ours     difference')
    for tooth, (labial, occlusal, _) in theirs.items():
        difference = max(abs(labial - ours[tooth][0]), abs(occlusal - ours[tooth][1])) / scale
        worst = max(worst, difference)
        print('  %5s    %18.4f  %8.4f    %20.4f  %8.4f    %8.3f %%' %
              (tooth, labial, ours[tooth][0], occlusal, ours[tooth][1], 100 * difference))
    return worst


def largest(forces):
    return max(arch_deck.length(force) for force in forces.values())


def print_machine():
    model = platform.processor() or platform.machine()
    cpuinfo = pathlib.Path('/proc/cpuinfo')
    if cpuinfo.exists():
        found = re.search(r'model name\s*:\s*(.*)', cpuinfo.read_text())
        model = found.group(1) if found else model
    version = subprocess.run(['ccx', '-v'], capture_output=True, text=True).stdout
    version = re.search(r'[0-9.]+', version)
    print('%s, one thread; %s; CalculiX %s; best of %d' %
          (model, platform.system(), version.group() if version else '?', REPEATS))


if __name__ == '__main__':
    main()
