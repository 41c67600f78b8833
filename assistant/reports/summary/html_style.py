"""How a summary looks in a browser, and on the paper that a browser prints."""

from assistant.reports.svg import FAINT, GRID, INK

_DOT = "#6e6e6e"

_DARK_INKS = {INK: "#ececec", FAINT: "#b5b5b5", GRID: "#3b3b3b", _DOT: "#9a9a9a", "#ffffff": "#161616"}
"""A drawing's colours on a dark screen."""


def _dark_drawings() -> str:
    return "\n".join(
        f'  svg [{name}="{light}"] {{ {name}: {dark}; }}'
        for light, dark in _DARK_INKS.items()
        for name in ("fill", "stroke")
    )


STYLE = f"""
:root {{ --ink: #1b1b1b; --quiet: #4d4d4d; --paper: #ffffff; --hair: #b9b9b9; --alarm: #8c1c13; }}
* {{ box-sizing: border-box; overflow-wrap: anywhere; hyphens: none; }}
html {{ background: var(--paper); color: var(--ink); -webkit-text-size-adjust: 100%; }}
body {{
  font: 1rem/1.45 system-ui, "DejaVu Sans", sans-serif;
  max-width: 52rem; margin: 0 auto; padding: 1.25rem 1rem 2rem;
}}
h1, h2, p, ul, ol, dl, table, figure {{ margin: 0 0 .6rem; }}
h1 {{ font-size: 1.5rem; line-height: 1.2; }}
h2 {{ font-size: 1.05rem; line-height: 1.3; border-bottom: 1px solid var(--ink); margin-top: 1.5rem; }}
p, li, dt, dd, th, td, figcaption, h1, h2 {{ unicode-bidi: isolate; }}
.about, .strong {{ font-weight: 700; }}
.about {{ font-size: 1.1rem; }}
.quiet, footer, figcaption {{ color: var(--quiet); }}
.danger {{
  font-weight: 700; color: var(--alarm); border: 3px double currentColor; border-inline-start-width: .75rem;
  border-inline-start-style: solid; padding: .4rem .7rem;
}}
ul, ol {{ padding-inline-start: 1.7rem; }}
li {{ margin-bottom: .2rem; }}
dl > div {{ display: grid; grid-template-columns: minmax(0, 2fr) minmax(0, 5fr); gap: 0 1rem; padding: .15rem 0; }}
dl > div + div, tbody tr + tr > * {{ border-top: 1px solid var(--hair); }}
dt {{ color: var(--quiet); }}
dd {{ margin: 0; }}
table {{ border-collapse: collapse; width: 100%; }}
th, td {{ text-align: start; vertical-align: top; font-weight: 400; padding: .2rem .8rem .2rem 0; }}
th, td {{ overflow-wrap: break-word; }}
.long {{ overflow-wrap: anywhere; }}
thead th {{ color: var(--quiet); border-bottom: 1px solid var(--hair); }}
figure svg {{ display: block; width: 100%; max-width: 720px; height: auto; }}
figure .narrow {{ display: none; }}
footer {{ font-size: .85em; margin-top: 2rem; border-top: 1px solid var(--hair); padding-top: .4rem; }}
.sheet + .sheet {{ border-top: 3px solid var(--hair); margin-top: 2rem; }}
@media screen and (max-width: 44rem) {{
  figure .wide {{ display: none; }}
  figure .narrow {{ display: block; max-width: 26rem; }}
}}
@media screen and (max-width: 36rem) {{
  dl > div {{ grid-template-columns: minmax(0, 1fr); }}
  table:not(.compact), table:not(.compact) :is(tbody, tr, th, td) {{ display: block; }}
  table:not(.compact) thead {{
    position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%);
  }}
  table:not(.compact) tbody tr + tr {{ border-top: 1px solid var(--hair); }}
  table:not(.compact) tbody tr + tr > * {{ border-top: 0; }}
  table:not(.compact) tbody tr {{ padding: .3rem 0; }}
  table:not(.compact) :is(th, td) {{ padding: .1rem 0; }}
  .compact {{ font-size: .875rem; line-height: 1.3; }}
  .compact :is(th, td) {{ padding-inline-end: .5rem; hyphens: auto; }}
  [data-label]:not(:empty)::before {{ content: attr(data-label) ": "; color: var(--quiet); }}
}}
@media screen and (prefers-color-scheme: dark) {{
  :root {{
    --ink: #ececec; --quiet: #b5b5b5; --paper: #161616; --hair: #5a5a5a; --alarm: #ffa599;
  }}
{_dark_drawings()}
}}
@page {{ size: A4; margin: 10mm 12mm; }}
@media print {{
  :root {{ color-scheme: light; }}
  body {{
    font: 7.9pt/1.18 "DejaVu Sans Condensed", system-ui, sans-serif; max-width: none; padding: 0;
  }}
  body.household {{ font-size: 9.1pt; line-height: 1.26; }}
  h1 {{ font-size: 1.5em; }}
  h2 {{ margin-top: .5em; font-size: 1.12em; line-height: 1.2; break-after: avoid; }}
  h1, h2, p, ul, ol, dl, table, figure {{ margin-bottom: .18em; }}
  li {{ margin-bottom: 0; }}
  dl > div, tr, li, figure {{ break-inside: avoid; }}
  dl > div {{ padding: 0; }}
  .engineer dl {{ columns: 2; column-gap: 6mm; }}
  .engineer dl > div + div {{ border-top: 0; }}
  .engineer dl > div {{ grid-template-columns: 38mm minmax(0, 1fr); column-gap: 2mm; }}
  .engineer dl > .wide {{ column-span: all; }}
  th, td {{ padding-block: .05em; }}
  .danger {{ padding: .2em .6em; }}
  .sheet + .sheet {{ break-before: page; border-top: 0; margin-top: 0; }}
  footer {{ margin-top: 1em; }}
  thead {{ display: table-header-group; }}
}}
"""
