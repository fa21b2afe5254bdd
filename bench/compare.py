"""Times the same work by this project, R and SciPy in one run and writes the tables of docs/performance.md.

Needs R with BradleyTerry2 and ordinal, and a python3 with NumPy and SciPy (this one). Usage: python3 bench/compare.py
The programs take turns, three rounds of each; a figure is the median of the rounds' medians. One processor each unless said.
"""
import os
import pathlib
import platform
import shutil
import statistics
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parent.parent
PROGRAM = ROOT / "bench" / "Trier.Benchmarks" / "bin" / "Release" / "net10.0" / "Trier.Benchmarks.dll"
ROUNDS = 3
ALONE = dict(os.environ, OMP_NUM_THREADS="1", OPENBLAS_NUM_THREADS="1", DOTNET_PROCESSOR_COUNT="1")

# Work, own name, other's name, the bar (times faster).
RATIOS = [
    ("Friedman on 1,000 by 5, against R's friedman.test", "friedman 1000x5", "friedman 1000x5 R", 200),
    ("the same against SciPy's friedmanchisquare", "friedman 1000x5", "friedman 1000x5 SciPy", 100),
    ("10,000 permutations of 12 by 5, against NumPy's permuted", "permutations 12x5", "permutations 12x5 NumPy", 15),
    ("20,000 Plackett-Luce panels of 12 by 5 with the Friedman statistic, against vectorised NumPy", "simulation 20000 of 12x5", "simulation 20000 of 12x5 NumPy", 25),
    ("exact null of 8 by 5, every attainable value, against NumPy's convolution", "exact null 8x5", "exact null 8x5 NumPy", 20),
    ("Bradley-Terry on 7 items (baseball), against R's BradleyTerry2", "bradley-terry 7", "bradley-terry 7 R", 100),
    ("proportional odds on the cheese additives, against R's ordinal::clm", "proportional odds", "proportional odds R", 30),
    ("Plackett-Luce on 5,000 orders of 10, against SciPy's L-BFGS with its gradient", "plackett-luce 5000x10", "plackett-luce 5000x10 SciPy", 20),
]

# Work, own name, bar in the unit, unit, factor from what is printed.
LIMITS = [
    ("exact Friedman p, a tie in every ballot, 15 by 5, two threads", "exact tied 15x5", 1, "s", 1),
    ("the same, half its processor time", "exact tied 15x5 processor", 1, "s", 1),
    ("20 by 5, two threads", "exact tied 20x5", 5, "s", 1),
    ("the same, half its processor time", "exact tied 20x5 processor", 5, "s", 1),
    ("50 by 4, two threads", "exact tied 50x4", 1, "s", 1),
    ("Plackett-Luce on 1,000,000 orders of 10, two cores", "plackett-luce 1000000x10", 5, "s", 1),
    ("the same, largest memory of the process", "plackett-luce 1000000x10 megabytes", 500, "MB", 1),
    ("serving plan of 40 by 8", "plan 40x8", 200, "ms", 1000),
    ("the same with a hidden repeat", "plan 40x8 with a repeat", 200, "ms", 1000),
]


def read(command, environment):
    printed = subprocess.run(command, check=True, capture_output=True, text=True, env=environment, cwd=ROOT).stdout
    return {name: float(value) for name, value in (line.split("\t") for line in printed.splitlines() if "\t" in line)}


def show(seconds):
    return f"{seconds * 1e6:.1f} us" if seconds < 1e-3 else f"{seconds * 1e3:.2f} ms" if seconds < 1 else f"{seconds:.2f} s"


def write(mark, text):
    page = ROOT / "docs" / "performance.md"
    content = page.read_text()
    begin, end = f"<!-- {mark}: begin -->", f"<!-- {mark}: end -->"
    start, stop = content.index(begin) + len(begin), content.index(end)
    page.write_text(content[:start] + "\n" + text + content[stop:])


def main():
    subprocess.run(["dotnet", "build", "-c", "Release", "-v", "q", "-nologo", "bench/Trier.Benchmarks"], check=True, cwd=ROOT)
    found = {}
    with tempfile.TemporaryDirectory() as folder:
        shutil.copy(ROOT / "tests/Trier.Statistics.Tests/Checks/data/ordinal_cheese_additives.csv", pathlib.Path(folder) / "cheese.csv")
        for _ in range(ROUNDS):
            # R and Python first: they put down the data that the others fit too.
            for command in (["Rscript", "bench/reference/speed.R", folder], [sys.executable, "bench/reference/speed.py", folder], ["dotnet", str(PROGRAM), "one", folder]):
                for name, value in read(command, ALONE).items():
                    found.setdefault(name, []).append(value)
    for mode in ("two", "million"):
        for name, value in read(["dotnet", str(PROGRAM), mode], dict(os.environ)).items():
            found.setdefault(name, []).append(value)
    median = {name: statistics.median(values) for name, values in found.items()}

    table = "| work | here | there | times faster | bar | |\n| --- | --- | --- | --- | --- | --- |\n"
    for work, own, other, bar in RATIOS:
        ratio = median[other] / median[own]
        table += f"| {work} | {show(median[own])} | {show(median[other])} | {ratio:.0f} | {bar} | {'met' if ratio >= bar else 'missed'} |\n"
    table += "\n| work | reached | bar | |\n| --- | --- | --- | --- |\n"
    for work, own, bar, unit, factor in LIMITS:
        value = median[own] * factor
        table += f"| {work} | {value:.3g} {unit} | {bar} {unit} | {'met' if value <= bar else 'missed'} |\n"
    load = os.getloadavg()
    table += f"\nRun on {os.cpu_count()} cores ({platform.machine()}), load average {load[0]:.0f} at the end.\n"
    write("ratios", table)
    print(table)
    if "--scaling" in sys.argv:
        scaling = subprocess.run(["dotnet", str(PROGRAM), "scaling"], check=True, capture_output=True, text=True, env=ALONE, cwd=ROOT).stdout
        write("scaling", scaling)
        print(scaling)


if __name__ == "__main__":
    main()
