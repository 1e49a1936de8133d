"""How hard the library is to break: mutated files, mutated photographs, and commands killed at random moments. Prints counts.

Run: python -m benchmarks.hardiness                 (10,000 files, 2,000 photographs, 200 kills; about two hours on a quiet machine)
     python -m benchmarks.hardiness --tenth         (a tenth of each)
     python -m benchmarks.hardiness --seed 7        (other files, at other moments)

Counted are tracebacks, runs without an end, files half written and files left behind; each is named with how to get it again.
"""

from __future__ import annotations

import argparse
import io
import os
import random
import shlex
import shutil
import signal
import subprocess
import sys
import tempfile
import time
import traceback
from collections import Counter
from collections.abc import Callable
from pathlib import Path

from PIL import Image

from keytool.contribute.photo.picture import NoPicture, picture
from keytool.library import load
from keytool.library.report import as_text
from tests.conftest import copy_mini, everything_found
from tests.contribute.helping import part
from tests.library.test_fuzz import HANGS, an_end

PROJECT = Path(__file__).parents[1]
FILES, PHOTOGRAPHS, KILLS = 10_000, 2_000, 200
LONGEST = 5
"""A killed command and the look at what it left hang when they take so many times what all commands take unharmed."""
BITS = [each.encode() for each in ("\0", "\n", "\t", "{", "}", "[", "]", ": ", "- ", "&a ", "*a", "!t ", "'", '"', "#", "µ", "\u200b")] + [
    b"\xff"
]
ENTRY = shlex.split(
    "new entry --like shirt-button --common 'Tarn End button' --summary Invented. --commonness rare --shows holes=four "
    "--shows width=14..16mm --shows rim=raised --shows light=shiny --contributor Ilse --reviewed 2026-01-01 --couplet --yes"
)


def mutated(content: bytes, chance: random.Random) -> bytes:
    """Content with one to three things done to it: bytes flipped, taken out, put in, lines swapped, the end cut off."""
    found = bytearray(content)
    for _ in range(chance.randint(1, 3)):
        at = chance.randrange(len(found) + 1)
        match chance.randrange(5):
            case 0 if found:
                found[at % len(found)] ^= 1 << chance.randrange(8)
            case 1:
                del found[at : at + chance.randint(1, 12)]
            case 2:
                found[at:at] = chance.choice(BITS)
            case 3:
                lines = found.split(b"\n")
                one, other = chance.randrange(len(lines)), chance.randrange(len(lines))
                lines[one], lines[other] = lines[other], lines[one]
                found = bytearray(b"\n".join(lines))
            case _:
                found = found[: max(1, at)] if chance.random() < 0.2 else found
    return bytes(found)


def tried(count: int, what: str, one: Callable[[int], str], end: int = HANGS) -> None:
    """Runs one case after the other and prints what came of them. What takes more than `end` seconds hangs."""
    came: Counter[str] = Counter()
    begin, slowest = time.perf_counter(), 0.0
    for number in range(count):
        start = time.perf_counter()
        try:
            with an_end(end):
                came[one(number)] += 1
        except Exception as error:
            came[f"BROKE: {type(error).__name__}"] += 1
            last = traceback.extract_tb(error.__traceback__)[-1]
            print(f"  {what} {number}: {type(error).__name__}: {error} ({Path(last.filename).name}:{last.lineno})")
        slowest = max(slowest, time.perf_counter() - start)
    told = ", ".join(f"{words} {number}" for words, number in sorted(came.items()))
    print(f"{count} {what}: {told}; {time.perf_counter() - begin:.0f} s, slowest {slowest:.1f} s")


def files(count: int, seed: int, work: Path) -> None:
    root = copy_mini(work / "files")
    paths = sorted((root / "keydata").rglob("*.yaml"))

    def one(number: int) -> str:
        chance = random.Random(f"{seed} file {number}")
        path = chance.choice(paths)
        before = path.read_bytes()
        try:
            path.write_bytes(mutated(before, chance))
            found = everything_found(load(root))
            as_text(found)
        finally:
            path.write_bytes(before)
        return "refused" if any(each.severity.value == "problem" for each in found) else "taken"

    tried(count, "mutated files", one)


def photographs(count: int, seed: int, work: Path) -> None:
    work.mkdir(parents=True, exist_ok=True)
    whole = Image.effect_noise((480, 360), 60).convert("RGB")
    carriers = []
    for kind, ending, options in (("JPEG", "jpg", {"quality": 70}), ("PNG", "png", {}), ("TIFF", "tif", {}), ("WEBP", "webp", {})):
        buffer = io.BytesIO()
        exif = Image.Exif()
        exif[0x0112] = 6
        whole.save(buffer, kind, exif=exif, **options)
        carriers.append((ending, buffer.getvalue()))

    def one(number: int) -> str:
        chance = random.Random(f"{seed} photograph {number}")
        ending, content = chance.choice(carriers)
        head = chance.random() < 0.5  # half of the harm is done where the format is told
        changed = mutated(content[:400], chance) + content[400:] if head else mutated(content, chance)
        path = work / f"photograph.{ending}"
        path.write_bytes(changed)
        try:
            taken = picture(path)
        except NoPicture:
            return "refused"
        assert not taken.image.getexif()
        return "taken"

    tried(count, "mutated photographs", one)


def kills(count: int, seed: int, work: Path) -> None:
    root = part(copy_mini(work / "kills"))
    out = work / "out"
    out.mkdir()
    shot = work / "shot.jpg"
    Image.effect_noise((900, 700), 60).convert("RGB").save(shot)
    photo = shlex.split(
        "photo add --entry shirt-button --author Ilse --licence cc0-1.0 --shows Seen. --um-per-pixel 20 --replace --id shirt-button-1"
    )
    commands = {
        "new": ENTRY,
        "photo": [*photo, str(shot)],
        "card": ["card", "--key", "buttons", "-o", str(out / "card.pdf")],
        "site": ["site", "-o", str(out / "site")],
    }
    whole = {name: took(command, root) for name, command in commands.items()}
    print("  unharmed: " + ", ".join(f"{name} {seconds:.1f} s" for name, seconds in whole.items()))
    shutil.rmtree(root)
    part(copy_mini(root))
    for each in out.iterdir():
        shutil.rmtree(each) if each.is_dir() else each.unlink()

    def one(number: int) -> str:
        chance = random.Random(f"{seed} kill {number}")
        name = chance.choice(list(commands))
        begun = set(out.glob(".*"))
        before = {path: path.read_bytes() for path in root.rglob("*") if path.is_file()}
        try:
            process = subprocess.Popen(line(commands[name], root), stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, cwd=PROJECT)
            try:
                process.wait(chance.uniform(0.0, 1.0) * whole[name])
            except subprocess.TimeoutExpired:
                process.send_signal(signal.SIGKILL)
            said = (process.communicate()[1] or b"").decode("utf-8", "replace")
            was_killed = process.returncode == -signal.SIGKILL
            assert "Traceback" not in said, said[-300:]
            faults = [
                str(each.place) for each in everything_found(load(root)) if each.severity.value == "problem" and each.check != "proof"
            ]
            assert not faults, f"{name}: the library has problems: {faults[:3]}"
            left = [str(path) for place in (root, out) for path in place.rglob("*") if is_left(path)]
            hidden = [path for path in left if not path.startswith(str(out / "."))]
            assert not hidden, f"{name}: left behind: {hidden[:3]}"
            if (card := out / "card.pdf").exists():
                assert card.read_bytes().rstrip().endswith(b"%%EOF"), "half a card"
            if (site := out / "site").exists():
                assert (site / "index.html").is_file() and (site / "sitemap.xml").is_file(), "half a site"
        finally:
            for path, content in before.items():
                path.write_bytes(content)
            for path in [path for path in root.rglob("*") if path.is_file() and path not in before]:
                path.unlink()
        beside = ", a folder it began beside it" if set(out.glob(".*")) - begun else ""
        return f"{name} {'killed' if was_killed else 'ended'}{beside}"

    tried(count, "kills", one, round(max(HANGS, LONGEST * sum(whole.values()))))
    took(commands["site"], root)
    print(f"  after one whole run of each: {[path.name for path in out.iterdir() if path.name.startswith('.')] or 'nothing'} left behind")


def line(command: list[str], root: Path) -> list[str]:
    return [sys.executable, "-m", "keytool.cli", "--library", str(root), *command]


def took(command: list[str], root: Path) -> float:
    begin = time.perf_counter()
    done = subprocess.run(line(command, root), capture_output=True, text=True, cwd=PROJECT)
    assert done.returncode == 0, (command, done.stderr[-400:] or done.stdout[-400:])
    return time.perf_counter() - begin


def is_left(path: Path) -> bool:
    """Whether a file is one that was begun and not finished."""
    return path.name.startswith((".", "tmp")) or path.suffix in (".tmp", ".part")


def main() -> None:
    read = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    read.add_argument("--tenth", action="store_true", help="a tenth of each")
    read.add_argument("--seed", type=int, default=1)
    read.add_argument("--only", choices=("files", "photographs", "kills"))
    given = read.parse_args()
    part = 10 if given.tenth else 1
    os.environ.setdefault("NO_MKDOCS_2_WARNING", "1")
    with tempfile.TemporaryDirectory() as work:
        for name, count, run in (("files", FILES, files), ("photographs", PHOTOGRAPHS, photographs), ("kills", KILLS, kills)):
            if given.only in (None, name):
                run(count // part, given.seed, Path(work) / name)


if __name__ == "__main__":
    main()
