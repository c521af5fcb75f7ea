"""Makes projects with limited resources and proves their shortest length, for the check of the planner's inner scheme.

    python projects.py > ../data/projects.json        (needs the package `ortools`; written with 9.15)

The projects are our own, drawn from a fixed seed: thirty activities, four renewable resources, of varied tightness. The
three measures by which they vary are those in use since Kolisch, Sprecher and Drexl 1995, "Characterization and generation
of a general class of resource-constrained project scheduling problems", Management Science 41: arcs an activity, share of
the resources that an activity wants, and how scarce the resources are. The optimum is proven by CP-SAT; a project whose
optimum is not proven in time is left out.
"""

import json
import pathlib
import random
import sys

from ortools.sat.python import cp_model

SEED = 20260912
ACTIVITIES = 30
RESOURCES = 4


def draw(rng, arcs_each, factor, strength):
    takes = [rng.randint(1, 10) for _ in range(ACTIVITIES)]
    after = [[] for _ in range(ACTIVITIES)]
    for later in range(3, ACTIVITIES):
        after[later].append(rng.randrange(max(0, later - 12), later))
    want = int(arcs_each * ACTIVITIES)
    while sum(map(len, after)) < want:
        later = rng.randrange(1, ACTIVITIES)
        sooner = rng.randrange(max(0, later - 12), later)
        if sooner not in after[later]:
            after[later].append(sooner)
    wants = []
    for _ in range(ACTIVITIES):
        row = [rng.randint(1, 10) if rng.random() < factor else 0 for _ in range(RESOURCES)]
        if not any(row):
            row[rng.randrange(RESOURCES)] = rng.randint(1, 10)
        wants.append(row)
    begins = [0] * ACTIVITIES
    for later in range(ACTIVITIES):
        begins[later] = max((begins[sooner] + takes[sooner] for sooner in after[later]), default=0)
    rooms = []
    for resource in range(RESOURCES):
        least = max(row[resource] for row in wants)
        end = max(b + t for b, t in zip(begins, takes))
        most = max(
            sum(w[resource] for b, t, w in zip(begins, takes, wants) if b <= at < b + t) for at in range(end)
        )
        rooms.append(max(least, least + round(strength * (most - least))))
    return {"rooms": rooms, "takes": takes, "wants": wants, "after": [sorted(a) for a in after]}


def prove(project):
    model = cp_model.CpModel()
    horizon = sum(project["takes"])
    begins = [model.new_int_var(0, horizon, "") for _ in project["takes"]]
    spans = [
        model.new_fixed_size_interval_var(b, t, "") for b, t in zip(begins, project["takes"])
    ]
    end = model.new_int_var(0, horizon, "")
    for later, sooner_ones in enumerate(project["after"]):
        for sooner in sooner_ones:
            model.add(begins[later] >= begins[sooner] + project["takes"][sooner])
        model.add(end >= begins[later] + project["takes"][later])
    for resource, room in enumerate(project["rooms"]):
        model.add_cumulative(spans, [row[resource] for row in project["wants"]], room)
    model.minimize(end)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    solver.parameters.max_time_in_seconds = 60
    return int(solver.objective_value) if solver.solve(model) == cp_model.OPTIMAL else None


def main():
    rng = random.Random(SEED)
    projects = []
    for arcs_each in (1.5, 1.8, 2.1):
        for factor in (0.25, 0.5, 0.75, 1.0):
            for strength in (0.1, 0.25, 0.5, 0.75):
                for _ in range(2):
                    project = draw(rng, arcs_each, factor, strength)
                    optimum = prove(project)
                    print(arcs_each, factor, strength, optimum, file=sys.stderr)
                    if optimum is not None:
                        projects.append(
                            {"arcs_each": arcs_each, "factor": factor, "strength": strength, "optimum": optimum}
                            | project
                        )
    data = pathlib.Path(__file__).parent.parent / "data"
    published = json.loads((data / "project_j30_1_1.json").read_text())
    assert prove(published) == published["optimum"]
    rows = ",\n".join(json.dumps(project, separators=(",", ":")) for project in projects)
    print("[\n" + rows + "\n]")


main()
