/**
 * How the page looks: one column that a hand can hold, light and dark, and a print of it. Colors hold
 * WCAG 2.2 AA (4.5 to 1 for text, success criterion 1.4.3); the outside checks measure that in a browser.
 */
export const htmlStyle = `
:root { --paper: #fdfcf8; --ink: #1d1f21; --soft: #55595e; --line: #c9c5ba; --warn: #fff0c9; --warnline: #9a5b00; --link: #0b4f8a; --side: #eef2f5; }
@media (prefers-color-scheme: dark) { :root { --paper: #16181a; --ink: #e8e6e1; --soft: #b3b0a8; --line: #4a4d50; --warn: #3a2d0a; --warnline: #e0a83a; --link: #8fc4f5; --side: #22272b; } }
* { box-sizing: border-box; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 17px/1.55 Georgia, "Times New Roman", serif; overflow-wrap: anywhere; }
main { max-width: 44rem; margin: 0 auto; padding: 1.2rem 1rem 3rem; }
h1, h2, h3 { line-height: 1.25; font-family: system-ui, sans-serif; }
h1 { font-size: 1.6rem; margin: .4rem 0 1rem; }
h2 { font-size: 1.2rem; margin: 2rem 0 .6rem; border-bottom: 1px solid var(--line); padding-bottom: .2rem; }
h3 { font-size: 1rem; margin: 1rem 0 .2rem; }
p, ul, ol, blockquote, aside, figure, .table { margin: .7rem 0; }
a { color: var(--link); }
.caution { background: var(--warn); border-left: .35rem solid var(--warnline); padding: .6rem .9rem; }
.margin { background: var(--side); border-left: .35rem solid var(--link); padding: .5rem .9rem; font-size: .92em; }
blockquote { border-left: .25rem solid var(--line); padding-left: .9rem; color: var(--soft); }
figure { text-align: center; }
img { max-width: 100%; height: auto; }
figcaption { color: var(--soft); font-size: .9em; }
.table { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font-size: .92em; }
th, td { text-align: left; vertical-align: top; padding: .25rem .6rem .25rem 0; border-bottom: 1px solid var(--line); overflow-wrap: normal; }
@page { size: A4; margin: 14mm 15mm; }
@media print {
  :root { --paper: #fff; --ink: #000; --soft: #333; --line: #999; --warn: #fff; --warnline: #000; --link: #000; --side: #fff; }
  body { font-size: 9.5pt; line-height: 1.3; }
  main { max-width: none; padding: 0; }
  h1 { font-size: 15pt; margin: 0 0 4pt; }
  h2 { font-size: 11pt; margin: 7pt 0 3pt; padding-bottom: 1pt; break-after: avoid; }
  h3 { float: left; clear: left; font-size: 9pt; line-height: 1.44; margin: 0 5pt 0 0; }
  h3 + p { margin: 1pt 0; }
  p, ul, ol, blockquote, aside, figure, .table { margin: 3pt 0; }
  ul, ol { padding-left: 14pt; }
  .caution { border: 1pt solid #000; padding: 3pt 6pt; }
  .margin { border: 1pt solid #999; padding: 2pt 6pt; }
  figure { float: right; clear: right; width: 42%; margin: 2pt 0 4pt 10pt; break-inside: avoid; }
  figcaption { font-size: 8pt; line-height: 1.2; }
  img { max-height: 140mm; }
  tr, .caution, .margin { break-inside: avoid; }
  .caution, .margin, .table { display: flow-root; overflow: visible; }
  th, td { padding: 1pt 6pt 1pt 0; }
  a { text-decoration: none; }
}
`;
