"""Takes from web-assets/node_modules only what a page needs, each with its licence beside it."""

import shutil
from pathlib import Path

from fontTools import subset

ROOT = Path(__file__).parents[1]
MODULES = ROOT / "web-assets/node_modules"
VENDOR = ROOT / "src/lightoff/surfaces/web/static/vendor"

COPIES = {
    "htmx.org/dist/htmx.min.js": "htmx.min.js",
    "htmx.org/LICENSE": "htmx.LICENSE.txt",
    "swagger-ui-dist/swagger-ui.css": "swagger-ui.css",
    "swagger-ui-dist/swagger-ui-bundle.js": "swagger-ui-bundle.js",
    "swagger-ui-dist/swagger-ui-bundle.js.LICENSE.txt": "swagger-ui-bundle.js.LICENSE.txt",
    "swagger-ui-dist/LICENSE": "swagger-ui.LICENSE.txt",
    "swagger-ui-dist/NOTICE": "swagger-ui.NOTICE.txt",
    "@expo-google-fonts/source-sans-3/LICENSE_FONT": "fonts/LICENSE.txt",
}
WEIGHTS = {400: "400Regular", 600: "600SemiBold", 700: "700Bold"}
LATIN = [*range(0x20, 0x7F), *range(0xA0, 0x180)]
SIGNS = (
    "−√≤≥≠≈∞∂∆∑→←↑↓↔ΔΣΩαβγδεζηθκλμνπρστφω"  # formulas
    "⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻₀₁₂₃₄₅₆₇₈₉₊₋⅓⅔⅛⅜⅝⅞⁄"  # figures
    "‘’“”–—‑…•′″€™\u2007\u2009\u202f"  # text, and spaces that keep a number with its unit
    "⌫✓✗○●□■△▲▽▼"  # keys and states
)


def main() -> None:
    shutil.rmtree(VENDOR, ignore_errors=True)
    (VENDOR / "fonts").mkdir(parents=True)
    for source, target in COPIES.items():
        shutil.copyfile(MODULES / source, VENDOR / target)
    for weight, name in WEIGHTS.items():
        whole = MODULES / f"@expo-google-fonts/source-sans-3/{name}/SourceSans3_{name}.ttf"
        _font(whole, VENDOR / f"fonts/lightoff-sans-{weight}.woff2")


def _font(source: Path, target: Path) -> None:
    """Only our characters; a missing one is an error."""
    options = subset.Options(flavor="woff2", ignore_missing_unicodes=False)
    font = subset.load_font(source, options)
    chosen = subset.Subsetter(options)
    chosen.populate(unicodes=LATIN, text=SIGNS)
    chosen.subset(font)
    # the licence reserves the name "Source" for the unchanged font
    for row in font["name"].names:
        if row.nameID in (1, 3, 4, 6, 16):
            own = row.toUnicode().replace("Source Sans 3", "Lightoff Sans")
            row.string = own.replace("SourceSans3", "LightoffSans")
    subset.save_font(font, target, options)


if __name__ == "__main__":
    main()
