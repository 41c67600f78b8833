"""Summaries as HTML in a real browser: rules of accessibility, of HTML, of paper, and that nothing is fetched.

    python -m tests.browser.check_pages --axe axe.min.js --vnu vnu.jar --pictures FOLDER SUMMARY.html ...

Needs Debian's chromium and, for --vnu, its default-jre-headless; the playwright of the Python packages; axe-core and
vnu-jar of the npm packages. Each page is opened dark and light, as wide as a phone and as wide as A4, and printed.
Prints what was found, by how grave it is, and ends with 1 if anything is serious.
"""

import argparse
import json
import subprocess
import sys
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path

from playwright.sync_api import Browser, Page, sync_playwright
from pypdf import PdfReader

WIDTHS = {"phone": 360, "A4": 794}
SCHEMES = ("light", "dark")
SERIOUS = frozenset({"critical", "serious", "error"})
CHROMIUM = "/usr/bin/chromium"


@dataclass(frozen=True)
class Finding:
    severity: str
    where: str
    what: str


def main() -> int:
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("pages", nargs="+", type=Path)
    options.add_argument("--axe", type=Path, required=True)
    options.add_argument("--vnu", type=Path)
    options.add_argument("--pictures", type=Path)
    arguments = options.parse_args()
    findings: list[Finding] = []
    opened = 0
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox"])
        for path in arguments.pages:
            findings += printed(browser, path, arguments.pictures)
            for scheme in SCHEMES:
                for name, width in WIDTHS.items():
                    findings += shown(browser, path, scheme, name, width, arguments)
                    opened += 1
        browser.close()
    if arguments.vnu:
        findings += validated(arguments.pages, arguments.vnu)
    for (severity, what), wheres in grouped(findings).items():
        print(f"{severity:>9}  {what}: {len(wheres)} times, first in {wheres[0]}")
    counts = Counter(finding.severity for finding in findings)
    print(f"{len(arguments.pages)} files, opened {opened} times;", dict(counts) or "nothing was found")
    return int(bool(SERIOUS & set(counts)))


def grouped(findings: list[Finding]) -> dict[tuple[str, str], list[str]]:
    groups: dict[tuple[str, str], list[str]] = {}
    for finding in findings:
        groups.setdefault((finding.severity, finding.what), []).append(finding.where)
    return groups


def shown(
    browser: Browser, path: Path, scheme: str, name: str, width: int, arguments: argparse.Namespace
) -> Iterator[Finding]:
    where = f"{path.name} {scheme} {name}"
    context = browser.new_context(viewport={"width": width, "height": 900}, color_scheme=scheme)
    page = context.new_page()
    complaints: list[str] = []
    fetched: list[str] = []
    page.on("console", lambda message: complaints.append(message.text))
    page.on("request", lambda request: fetched.append(request.url))
    page.goto(path.resolve().as_uri())
    if page.evaluate("document.documentElement.scrollWidth > innerWidth"):
        yield Finding("serious", where, "scrolls sideways")
    yield from (Finding("serious", where, f"complains: {complaint}") for complaint in complaints)
    yield from (Finding("serious", where, f"fetches {url}") for url in fetched[1:])
    if arguments.pictures:
        arguments.pictures.mkdir(parents=True, exist_ok=True)
        page.screenshot(path=arguments.pictures / f"{path.stem}.{scheme}.{name}.png", full_page=True)
    context.close()
    yield from judged(browser, path, scheme, width, arguments.axe, where)


def judged(browser: Browser, path: Path, scheme: str, width: int, axe: Path, where: str) -> Iterator[Finding]:
    """By axe, which has to get past the page's own policy."""
    context = browser.new_context(viewport={"width": width, "height": 900}, color_scheme=scheme, bypass_csp=True)
    page = context.new_page()
    page.goto(path.resolve().as_uri())
    page.add_script_tag(path=axe)
    results = page.evaluate("axe.run(document, {resultTypes: ['violations', 'incomplete', 'passes']})")
    assert results["passes"], f"{where}: no rule was even tried"
    for violation in results["violations"]:
        first = violation["nodes"][0]["html"][:100]
        yield Finding(violation["impact"], where, f"{violation['id']}: {violation['help']} ({first})")
    for undecided in results["incomplete"]:
        yield Finding("undecided", where, f"{undecided['id']}: {undecided['help']}")
    context.close()


def printed(browser: Browser, path: Path, pictures: Path | None) -> Iterator[Finding]:
    """Each part begins on a page of its own, and the first holds on one."""
    page = browser.new_page(color_scheme="dark")
    page.goto(path.resolve().as_uri())
    pdf = page.pdf(prefer_css_page_size=True)
    if pictures:
        pictures.mkdir(parents=True, exist_ok=True)
        (pictures / f"{path.stem}.printed.pdf").write_bytes(pdf)
    texts = ["".join(sheet.extract_text().split()) for sheet in PdfReader(BytesIO(pdf)).pages]
    sides = {tuple(map(float, sheet.mediabox[2:])) for sheet in PdfReader(BytesIO(pdf)).pages}
    if any(abs(wide - 595.3) > 1 or abs(tall - 841.9) > 1 for wide, tall in sides):
        yield Finding("serious", path.name, f"isn't printed on A4 but on {sides}")
    for number, heading in enumerate(_first_headings(page)):
        starts_at = next((place for place, text in enumerate(texts) if text.startswith(heading)), None)
        if number and starts_at is None:
            yield Finding("serious", path.name, f"no page begins with {heading!r}")
        if number == 1 and starts_at not in (None, 1):
            yield Finding("moderate", path.name, f"page one takes {starts_at} pages")
    page.close()


def _first_headings(page: Page) -> list[str]:
    return ["".join(each.split()) for each in page.locator(".sheet > section:first-child > h2").all_inner_texts()]


def validated(pages: list[Path], vnu: Path) -> Iterator[Finding]:
    command = ["java", "-jar", str(vnu), "--format", "json", "--exit-zero-always", *map(str, pages)]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    for message in json.loads(done.stderr)["messages"]:
        severity = message.get("subType", message["type"])
        yield Finding(severity, Path(message["url"]).name, message["message"][:160])


if __name__ == "__main__":
    sys.exit(main())
