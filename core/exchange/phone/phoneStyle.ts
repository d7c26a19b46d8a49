/** The looks of the phone page: large letters, strong contrast, dark where the phone is dark. */
export const phoneStyle = `
:root { --paper: #fff; --ink: #14181d; --soft: #4a4f57; --rule: #8a8f98; --band: #e4e4e4; --warn: #fff0d6; color-scheme: light dark;
  --sketch-ink: var(--ink); --sketch-soft: var(--soft); --sketch-faint: var(--rule); --sketch-band: var(--band); --sketch-paper: var(--paper); }
@media (prefers-color-scheme: dark) {
  :root { --paper: #14181d; --ink: #f4f2ec; --soft: #c3c6cb; --rule: #80858e; --band: #333a43; --warn: #45340f; }
}
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 0 14px 40px; max-width: 46rem; background: var(--paper); color: var(--ink); font: 17px/1.45 sans-serif; }
h2, .card { scroll-margin-top: 110px; }
h1 { font-size: 24px; margin: 16px 0 4px; } h2 { font-size: 20px; margin: 28px 0 8px; } h3 { font-size: 18px; margin: 0 0 4px; }
p { margin: 4px 0 8px; }
.bar { position: sticky; top: 0; z-index: 1; background: var(--paper); padding: 10px 0; border-bottom: 2px solid var(--ink); }
.bar label { display: block; font-weight: bold; }
input { width: 100%; min-height: 48px; padding: 6px 12px; font: inherit; color: inherit; background: var(--paper); border: 2px solid var(--ink); border-radius: 4px; }
button { min-width: 48px; min-height: 48px; padding: 0 16px; font: inherit; color: inherit; background: var(--paper); border: 2px solid var(--ink); border-radius: 4px; }
nav a { display: inline-block; min-height: 44px; padding: 10px 14px 10px 0; color: inherit; }
.map { overflow: auto; max-height: 75vh; border: 1px solid var(--rule); }
.map svg { display: block; width: 100%; height: auto; }
.card { border: 1px solid var(--rule); border-radius: 4px; padding: 12px; margin: 0 0 14px; }
.card svg, .card img { display: block; width: 100%; height: auto; }
.card ol, .card ul { margin: 6px 0; padding-left: 24px; } .card li { margin: 4px 0; }
.card summary { min-height: 44px; padding: 8px 0; font-weight: bold; }
table { border-collapse: collapse; width: 100%; } th, td { text-align: left; vertical-align: top; padding: 6px 8px 6px 0; border-bottom: 1px solid var(--rule); }
.caution { background: var(--warn); border-left: 6px solid var(--ink); padding: 8px 12px; }
.tag { display: inline-block; border: 2px solid var(--ink); border-radius: 4px; padding: 0 8px; font-weight: bold; }
.drawn { border-style: dashed; }
.planned { border-style: dotted; font-weight: normal; }
.warns { border-width: 4px; background: var(--warn); }
a { color: inherit; }
:focus-visible { outline: 3px solid currentColor; outline-offset: 2px; }
[hidden] { display: none !important; }
`;
