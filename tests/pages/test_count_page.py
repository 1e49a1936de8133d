"""The count sheet and the photograph page in a browser, opened as files: nothing tallied is lost, nothing leaves the page."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PIL import Image

from keytool.bench.sheet_csv import from_csv
from keytool.bench.sheet_json import from_text
from keytool.library import Library
from keytool.pages.bundles import BUNDLES, bundled
from keytool.pages.count_page import count_page, measure_page
from keytool.pages.page import Asset
from tests.bench.test_field_edge import through_the_eyepiece
from tests.bench.test_stage_lines import micrometer

pytestmark = pytest.mark.browser
SITE = Path(__file__).parents[2] / "site"


@pytest.fixture(scope="module")
def folder(library: Library, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Both pages with their bundles, without the frame."""
    out = tmp_path_factory.mktemp("count")
    written = [
        Asset(path.relative_to(SITE).as_posix(), path.read_bytes(), "") for path in sorted((SITE / "assets").rglob("*")) if path.is_file()
    ]
    for asset in bundled(written):
        if asset.path.removeprefix("assets/") in BUNDLES:
            (out / asset.path).parent.mkdir(parents=True, exist_ok=True)
            (out / asset.path).write_bytes(asset.content)
    for made in (count_page(library), measure_page(library)):
        head = '<meta charset="utf-8"><meta name="viewport" content="width=device-width"><link rel="stylesheet" href="assets/wetmount.css">'
        text = f'<!doctype html><html lang="en">{head}<body class="s-count"><main class="page" id="main">{made.html}</main></body></html>'
        (out / made.path.replace(".md", ".html")).write_text(text, "utf-8")
    return out


@pytest.fixture
def context(browser: Any) -> Iterator[Any]:
    made = browser.new_context(viewport={"width": 360, "height": 740}, accept_downloads=True)
    yield made
    made.close()


def opened(context: Any, folder: Path, name: str = "count.html", script: str = "") -> Any:
    page = context.new_page()
    page.wrong = []
    page.asked = []
    page.on("pageerror", lambda error: page.wrong.append(str(error)))
    page.on("request", lambda request: page.asked.append(request.url))
    if script:
        page.add_init_script(script)
    page.goto(f"file://{folder}/{name}")
    return page


def begin(page: Any) -> None:
    page.get_by_role("button", name="Start counting").last.click()


def tap(page: Any, id: str, times: int = 1) -> None:
    for _ in range(times):
        page.locator(f'[data-id="{id}"]').click()


def count_of(page: Any, id: str) -> str:
    return page.locator(f'[data-id="{id}"] b').inner_text()


def test_a_first_visit_sets_up_and_then_counts(context: Any, folder: Path) -> None:
    page = opened(context, folder)
    assert "450 µm" in page.inner_text("#main")
    begin(page)
    tap(page, "nematode", 2)
    assert count_of(page, "nematode") == "2"
    page.get_by_role("button", name="Drop done").last.click()
    tap(page, "flagellate", 3)
    page.get_by_role("button", name="Next field").last.click()
    assert "In a millilitre of soil so far" in page.inner_text("#main")
    assert page.wrong == []
    assert all(url.startswith("file://") for url in page.asked)


def test_a_phone_locked_in_the_middle_of_a_field_loses_nothing(context: Any, folder: Path) -> None:
    page = opened(context, folder)
    begin(page)
    tap(page, "nematode", 3)
    page.close()
    again = opened(context, folder)
    assert count_of(again, "nematode") == "3"
    again.get_by_role("button", name="Take back nematode").last.click()
    assert count_of(again, "nematode") == "2"


def test_two_tabs_add_up(context: Any, folder: Path) -> None:
    one = opened(context, folder)
    begin(one)
    two = opened(context, folder)
    tap(one, "nematode", 2)
    two.wait_for_function("document.querySelector('[data-id=nematode] b').textContent === '2'")
    tap(two, "nematode")
    one.wait_for_function("document.querySelector('[data-id=nematode] b').textContent === '3'")


SHUT = "Object.defineProperty(window, 'localStorage', {get() { throw new Error('shut'); }});"
FULL = "Storage.prototype.setItem = function () { throw new DOMException('full', 'QuotaExceededError'); };"


@pytest.mark.parametrize("script", [SHUT, FULL], ids=["private window", "storage full"])
def test_where_the_device_keeps_nothing_it_says_so_and_goes_on(context: Any, folder: Path, script: str) -> None:
    page = opened(context, folder, script=script)
    begin(page)
    tap(page, "nematode", 4)
    assert count_of(page, "nematode") == "4"
    assert "save it as a file before you leave" in page.get_by_role("alert").inner_text()
    assert page.wrong == []


def test_the_end_of_a_walk_adds_one_and_clears_its_address(context: Any, folder: Path) -> None:
    page = opened(context, folder, "count.html#add=plectus,colpoda")
    assert count_of(page, "plectus") == "1"
    assert count_of(page, "colpoda") == "1"
    assert "#" not in page.url
    page.reload()
    assert count_of(page, "plectus") == "1"
    page.goto(f"file://{folder}/count.html#add=nonsuch")
    assert "Nothing in the library is called 'nonsuch'" in page.locator(".count-said").inner_text()
    page.goto(f"file://{folder}/count.html#add=%E0")
    assert "Nothing in the library is called '%E0'" in page.locator(".count-said").inner_text()
    page.goto(f"file://{folder}/count.html#add=other%3ANot%20named")
    assert count_of(page, "other:Not named") == "1"
    assert page.wrong == []


def test_what_is_not_in_the_library_is_counted_too(context: Any, folder: Path) -> None:
    page = opened(context, folder)
    begin(page)
    page.get_by_role("button", name="Something else").click()
    page.get_by_label("Name of what you saw").fill("glass <b>ball")
    page.get_by_role("button", name="Not in the library").click()
    assert page.locator('[data-id="other:glass <b>ball"] b').inner_text() == "1"


def test_files_come_back_as_they_went(context: Any, folder: Path, library: Library, tmp_path: Path) -> None:
    page = opened(context, folder, "count.html#demo")
    page.goto(f"file://{folder}/count.html#samples")
    with page.expect_download() as taken:
        page.get_by_role("button", name="Save as file").click()
    with page.expect_download() as table:
        page.get_by_role("button", name="Save as table").click()
    record = from_text(taken.value.path().read_text("utf-8"), library)
    assert record == from_csv(table.value.path().read_bytes(), library)
    assert [each.name for each in record.samples] == ["Plot 3, spring", "Plot 3, autumn"]
    bad = tmp_path / "bad.csv"
    bad.write_text("sample,slide,at,field,count-of,count\na,1,field,1,ciliate,-2\n", "utf-8")
    page.set_input_files("input[type=file]", bad)
    page.wait_for_function("document.querySelector('.count-said').textContent.includes('row 2')")
    assert "Nothing was taken from it" in page.locator(".count-said").inner_text()


def test_the_report_says_what_the_command_says(context: Any, folder: Path, library: Library) -> None:
    from keytool.bench.report_words import answer, next_steps, summary
    from keytool.bench.results import results
    from keytool.bench.sheet_json import from_data
    from keytool.bench.verdict import verdict

    page = opened(context, folder, "count.html#demo")
    page.goto(f"file://{folder}/count.html#report")
    said = page.inner_text("#main")
    sample = from_data(library.bench.demo, library).samples[-1]
    outcomes = verdict(library, sample)
    for sentence in (*summary(library, results(library, sample)), *next_steps(outcomes), *(answer(each) for each in outcomes)):
        assert sentence in said
    assert "An invented sample" in said
    assert page.locator("svg.iv-plot").count() > 10


def test_targets_are_large_and_nothing_is_wider_than_the_screen(context: Any, folder: Path) -> None:
    page = opened(context, folder, "count.html#demo")
    for hash in ("", "#setup", "#samples", "#report"):
        page.goto(f"file://{folder}/count.html{hash}")
        assert page.evaluate("document.documentElement.scrollWidth") <= 360
        heights = page.locator("#main button:visible").evaluate_all("all => all.map(each => each.getBoundingClientRect().height)")
        assert min(heights) >= 47.5


def test_a_photograph_is_measured_on_the_page(context: Any, folder: Path, tmp_path: Path) -> None:
    image, true = through_the_eyepiece(5)
    image.save(tmp_path / "eye.jpg", quality=92)
    page = opened(context, folder, "measure.html")
    page.get_by_label("Open a photograph").set_input_files(tmp_path / "eye.jpg")
    page.wait_for_selector("text=The round edge was found")
    box = page.locator("canvas").first.bounding_box()
    k = box["width"] / image.width
    for dx in (0, true.radius / 2):
        page.mouse.click(box["x"] + (true.x + dx) * k, box["y"] + true.y * k)
    measured = float(page.locator("ol li b").inner_text().split(" ")[0])
    assert measured == pytest.approx(112.5, rel=0.03)  # a quarter of 450 µm; a tap is good to a pixel of the screen
    with page.expect_download() as saved:
        page.get_by_role("button", name="Save with a scale bar").click()
    assert saved.value.path().read_bytes()[:4] == b"\x89PNG"
    assert page.wrong == []
    assert not [url for url in page.asked if not url.startswith(("file://", "blob:"))]


def test_a_stage_micrometer_in_a_second_picture_is_the_scale(context: Any, folder: Path, tmp_path: Path) -> None:
    ruled, pitch = micrometer(3)
    ruled.save(tmp_path / "ruled.png")
    Image.new("RGB", ruled.size, (150, 150, 150)).save(tmp_path / "drop.png")
    page = opened(context, folder, "measure.html")
    page.get_by_label("Open a photograph").set_input_files(tmp_path / "drop.png")
    page.locator("summary", has_text="stage micrometer").click()
    page.get_by_label("Open a picture of a stage micrometer").set_input_files(tmp_path / "ruled.png")
    page.wait_for_selector("text=Lines were found")
    said = float(re.search(r"One pixel is ([0-9.]+) µm", page.inner_text("#main"))[1])
    assert said == pytest.approx(10 / pitch, rel=0.01)
    page.get_by_label("Divisions between").fill("20")
    page.get_by_label("Divisions between").blur()
    for x in (0.1, 0.9):
        box = page.get_by_label("The stage micrometer").bounding_box()
        page.mouse.click(box["x"] + box["width"] * x, box["y"] + box["height"] / 2)
    assert "set by your two lines" in page.inner_text("#main")
    assert float(re.search(r"One pixel is ([0-9.]+) µm", page.inner_text("#main"))[1]) == pytest.approx(200 / (0.8 * ruled.width), rel=0.02)
    Image.new("RGB", (300, 200)).save(tmp_path / "small.png")
    page.get_by_label("Open a photograph").set_input_files(tmp_path / "small.png")
    page.wait_for_selector("text=Its scale is not used")
    assert page.wrong == []


def test_a_scale_known_beforehand_is_that_of_the_picture_as_it_came(context: Any, folder: Path, tmp_path: Path) -> None:
    Image.new("RGB", (5200, 1000), (150, 150, 150)).save(tmp_path / "large.png")  # worked on at half its size
    page = opened(context, folder, "measure.html")
    page.get_by_label("Open a photograph").set_input_files(tmp_path / "large.png")
    page.wait_for_selector("text=Tap three points")
    page.get_by_label("Known already").fill("0.1")
    page.get_by_label("Known already").blur()
    page.get_by_role("button", name="Length").click()
    for x in (0.25, 0.75):
        box = page.locator("canvas").first.bounding_box()
        page.mouse.click(box["x"] + box["width"] * x, box["y"] + box["height"] / 2)
    assert float(page.locator("ol li b").inner_text().split(" ")[0]) == pytest.approx(260, rel=0.02)  # 2600 of its pixels


def test_what_is_tapped_on_a_photograph_becomes_a_field_of_the_sheet(context: Any, folder: Path, tmp_path: Path) -> None:
    whole = next(seed for seed in range(40) if all(each > 0 for each in margins(seed)))
    cut = next(seed for seed in range(40) if min(margins(seed)) < -60)
    page = opened(context, folder, "measure.html")
    for seed in (cut, whole):
        image, true = through_the_eyepiece(seed)
        image.save(tmp_path / "eye.png")
        page.get_by_label("Open a photograph").set_input_files(tmp_path / "eye.png")
        page.wait_for_selector("text=The round edge was found")
        page.get_by_role("button", name="Count", exact=True).click()
        page.get_by_label("What you tap").select_option("flagellate")
        for dx in (-0.2, 0, 0.2):
            box = page.locator("canvas").first.bounding_box()
            k = box["width"] / image.width
            page.mouse.click(box["x"] + (true.x + dx * true.radius) * k, box["y"] + true.y * k)
        assert "3 counted, Flagellates" in page.inner_text("#main")
        if seed == cut:
            assert "The count sheet counts whole fields" in page.inner_text("#main")
    page.get_by_role("link", name="as one field").click()
    page.wait_for_selector("text=One field from the photograph: 3 Flagellates")
    assert count_of(page, "flagellate") == "3"
    assert "3 in 1 field" in page.inner_text("#main")
    page.goto(f"file://{folder}/count.html#field=1800;flagellate:3")
    assert "It was not counted" in page.locator(".count-said").inner_text()
    page.goto(f"file://{folder}/count.html#field=450;dragon:3")
    assert "Nothing was taken" in page.locator(".count-said").inner_text()
    assert page.wrong == []


def margins(seed: int) -> tuple[float, ...]:
    image, true = through_the_eyepiece(seed)
    return true.x - true.radius, true.y - true.radius, image.width - true.x - true.radius, image.height - true.y - true.radius


def test_where_the_edge_is_not_found_three_taps_set_it(context: Any, folder: Path, tmp_path: Path) -> None:
    Image.new("RGB", (600, 600), (150, 150, 150)).save(tmp_path / "plain.png")
    page = opened(context, folder, "measure.html")
    page.get_by_label("Open a photograph").set_input_files(tmp_path / "plain.png")
    page.wait_for_selector("text=Tap three points on it")
    for x, y in ((0.5, 0.1), (0.9, 0.5), (0.1, 0.5)):
        box = page.locator("canvas").first.bounding_box()
        page.mouse.click(box["x"] + box["width"] * x, box["y"] + box["height"] * y)
    assert "The edge is set" in page.locator(".count-said").inner_text()
    assert "0.93" in page.inner_text("#main")  # 450 µm over 480 pixels


HEARD = """
window.heard = [];
window.AudioContext = function () {
  var part = () => ({setValueAtTime() {}, linearRampToValueAtTime() {}, exponentialRampToValueAtTime() {}});
  return {state: 'running', currentTime: 0, destination: {}, resume() {},
    createGain: () => ({gain: part(), connect: (to) => to}),
    createOscillator: () => { var tone = {frequency: {value: 0}, connect: (to) => to, start() { window.heard.push(tone.frequency.value); }, stop() {}}; return tone; }};
};
"""


def test_a_tap_sounds_only_where_that_was_asked_for_and_each_button_its_own_tone(context: Any, folder: Path) -> None:
    page = opened(context, folder, script=HEARD)
    begin(page)
    tap(page, "nematode")
    assert page.evaluate("heard") == []
    page.goto(f"file://{folder}/count.html#setup")
    page.get_by_label("Sound at each tap").click()
    begin(page)
    page.evaluate("heard.length = 0")
    tap(page, "nematode", 2)
    tap(page, "ciliate")
    page.get_by_role("button", name="Take back ciliate").last.click()
    one, again, other, back = page.evaluate("heard")
    assert one == again != other
    assert back < min(one, other)
    assert page.wrong == []


def test_a_field_half_looked_at_says_nothing_yet(context: Any, folder: Path) -> None:
    page = opened(context, folder, "count.html#demo")
    before = page.locator(".count-grams").inner_text()
    tap(page, "flagellate", 3)
    assert page.locator(".count-grams").inner_text() == before
    page.get_by_role("button", name="Next field").last.click()
    assert page.locator(".count-grams").inner_text() != before


def test_a_file_in_another_writing_is_refused_with_its_row(context: Any, folder: Path, tmp_path: Path) -> None:
    page = opened(context, folder, "count.html#samples")
    bad = tmp_path / "old.csv"
    bad.write_bytes("sample,slide,at,field,count-of,count\nWüste,1,field,1,ciliate,2\n".encode("latin-1"))
    page.set_input_files("input[type=file]", bad)
    page.wait_for_function("document.querySelector('.count-said').textContent.includes('row 2: this is not UTF-8')")
    ten = tmp_path / "ten.csv"
    rows = [f"sample {n // 20000},1,field,{n % 20000 + 1},flagellate,{n % 7},{'a long note ' * 5}" for n in range(120_000)]
    ten.write_text("sample,slide,at,field,count-of,count,note\n" + "\n".join(rows), "utf-8")
    page.set_input_files("input[type=file]", ten)
    page.wait_for_function(
        "document.querySelector('.count-said').textContent.includes('read from ten.csv') || document.querySelector('[role=alert]')"
    )
    assert page.wrong == []


def test_optics_are_shared_with_the_other_pages(context: Any, folder: Path) -> None:
    page = opened(context, folder)
    page.locator("input").first.fill("20")
    page.locator("input").first.blur()
    assert json.loads(page.evaluate("localStorage.getItem('wetmount.optics')"))["field-number"] == 20
    assert "500 µm" in page.inner_text("#main")


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("beside", [0, 1], ids=["alone", "two dates"])
def test_the_printed_report_is_one_side(context: Any, folder: Path, tmp_path: Path, paper: str, beside: int) -> None:
    pypdf = pytest.importorskip("pypdf")
    page = opened(context, folder, "count.html#demo")
    page.goto(f"file://{folder}/count.html#report")
    page.wait_for_selector("svg.iv-plot")
    page.get_by_label("Another sample beside it").select_option(index=beside)
    assert (page.locator("svg.iv-plot.thin").count() > 8) is bool(beside)
    assert page.locator("svg.iv-precision").count() == 1
    margin = dict.fromkeys(("top", "bottom"), "16mm") | dict.fromkeys(("left", "right"), "18mm")
    page.pdf(path=str(tmp_path / "report.pdf"), format=paper, margin=margin)
    assert len(pypdf.PdfReader(tmp_path / "report.pdf").pages) == 1
