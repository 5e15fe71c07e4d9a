import { darkPalette, type Inks, palette } from '../../draw/paper/palette.ts';

/** Every page's style sheet: the sheet's typeface, inks and even margins, on lines of 24 px. */
export const pageStyle: string = `
:root{color-scheme:light dark;${inks(palette)}}
@media (prefers-color-scheme:dark){:root{${inks(darkPalette)}}}
@media print{:root{color-scheme:light;${inks(palette)}--paper:#fff}}
*{box-sizing:border-box}
body{margin:0 auto;max-width:77rem;padding:40px 32px 48px;background:var(--paper);color:var(--ink);font:1rem/1.5 'Source Sans 3','Source Sans Pro','Helvetica Neue',Arial,sans-serif;font-variant-numeric:tabular-nums;overflow-wrap:anywhere}
h1,h2,h3,p,ul,ol,dl,dd,figure,table{margin:0;padding:0}
h1{font-size:1.75rem;line-height:2.25rem;font-weight:600;max-width:60rem;text-wrap:pretty}
h2{font-size:1.1875rem;line-height:1.5rem;font-weight:600}
h3{font-size:1rem;line-height:1.5rem;font-weight:600}
strong{font-weight:600}
small{font-size:.875rem;color:var(--soft)}
code{font:inherit}
a{color:var(--wave);text-underline-offset:.2em;text-decoration-thickness:1px}
a:hover{text-decoration-thickness:2px}
:focus-visible{outline:3px solid var(--wave);outline-offset:2px}
.outside{color:var(--outside)}
.soft{color:var(--soft)}
.links{list-style:none;display:flex;flex-wrap:wrap;gap:0 20px}
.hidden{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
[hidden]{display:none!important}
main>section{margin-top:40px}
main>section>h2,.columns h2{border-bottom:1px solid var(--line);padding-bottom:7px;margin-bottom:8px}
.plain{padding-left:1.1em}
.plain li+li,p+p{margin-top:8px}
footer{margin-top:48px;border-top:1px solid var(--line);padding-top:12px;font-size:.875rem;color:var(--soft)}
footer strong{color:var(--ink)}
.picture{margin-top:24px}
.picture svg{display:block;width:100%;height:auto;border:1px solid var(--line)}
.columns{display:grid;grid-template-columns:repeat(2,minmax(0,1fr));gap:40px 48px;margin-top:40px;align-items:start}
.columns section+section{margin-top:40px}
.data{border-collapse:collapse;width:100%}
.data caption{text-align:left;color:var(--soft);font-size:.875rem;padding-bottom:4px}
.data th,.data td{padding:3px 16px 4px 0;text-align:left;vertical-align:baseline;font-weight:400}
.data tr>:last-child{padding-right:0}
.data .number{text-align:right;overflow-wrap:normal}
.data thead th{font-size:.875rem;color:var(--soft);border-bottom:1px solid var(--line);vertical-align:bottom}
.data tbody tr+tr>*{border-top:1px solid color-mix(in srgb,var(--line) 45%,transparent)}
.data small{display:inline}
.data thead button{font:inherit;color:inherit;background:none;border:0;padding:2px 0;margin:0;text-align:inherit;cursor:pointer;min-height:24px}
.data thead button:hover{color:var(--ink);text-decoration:underline}
.data thead button::after{content:'↕';margin-left:.35em;opacity:.55}
.data thead [aria-sort] button{color:var(--ink);font-weight:600}
.data thead [aria-sort=ascending] button::after{content:'↑';opacity:1}
.data thead [aria-sort=descending] button::after{content:'↓';opacity:1}
.data+.data,p+.data,.data+h3,.plain+.data,.picture+.data,.data+.plain{margin-top:24px}
.picture+.links,header+main>.links{margin-top:12px}
.arrange{display:flex;flex-wrap:wrap;gap:12px 24px;align-items:end;margin-top:24px}
.arrange label{display:grid;gap:2px;font-size:.875rem;color:var(--soft)}
.arrange .check{display:flex;align-items:center;gap:8px;min-height:36px}
.arrange input,.arrange select{font-family:inherit;font-size:1rem;line-height:1.25;color:var(--ink);background:transparent;border:1px solid var(--soft);border-radius:0;padding:6px 8px;min-height:36px;max-width:100%}
.arrange option{background:var(--paper);color:var(--ink)}
.arrange [type=checkbox]{width:20px;height:20px;min-height:0;margin:0;padding:0;accent-color:var(--wave)}
.arrange p{flex-basis:100%;font-size:.875rem}
.entries{list-style:none}
.entry{display:grid;grid-template-columns:224px minmax(0,1fr) minmax(15rem,19rem);gap:8px 32px;padding:20px 0;align-items:start}
.entry+.entry{border-top:1px solid var(--line)}
.entry h3{font-size:1.0625rem}
.entry p{margin-top:4px}
.entry .links{margin-top:4px}
.load{font-weight:400;color:var(--soft);margin-left:.5em}
.file{font-size:.875rem;color:var(--soft)}
.figures>div{display:flex;justify-content:space-between;gap:16px;padding:2px 0 3px}
.figures>div+div{border-top:1px solid color-mix(in srgb,var(--line) 45%,transparent)}
.figures dt{color:var(--soft)}
.figures dd{text-align:right;white-space:nowrap}
.thumb{display:block;max-width:100%;height:auto}
.thumb path{fill:none;stroke-linejoin:round}
.thumb .axis{stroke:var(--line)}
.thumb .ideal{stroke:var(--ideal);stroke-width:2.5}
.thumb .wave{stroke:var(--wave);stroke-width:1.5}
.thumb .dot{fill:var(--wave)}
.thumb .lost{stroke:var(--outside);stroke-width:2}
@media (max-width:68rem){
.entry{grid-template-columns:160px minmax(0,1fr);gap:8px 24px}
.entry .figures{grid-column:2}
.figures{display:grid;grid-template-columns:repeat(auto-fill,minmax(13rem,1fr));gap:0 24px}
.figures>div+div{border-top:0}
}
@media (max-width:52rem){
body{padding:24px 16px 32px}
h1{font-size:1.5rem;line-height:2rem}
.columns{grid-template-columns:minmax(0,1fr);margin-top:32px}
main>section,.columns section+section{margin-top:32px}
.data th,.data td{padding-right:10px}
.stacks,.stacks caption,.stacks tbody{display:block}
.stacks thead tr{display:flex;flex-wrap:wrap;gap:0 16px}
.stacks thead th{border:0}
.stacks thead{display:block;border-bottom:1px solid var(--line)}
.stacks tbody tr{display:block;padding:8px 0}
.stacks tbody tr+tr{border-top:1px solid var(--line)}
.stacks.data tbody tr>*{display:grid;grid-template-columns:8.5rem minmax(0,1fr);padding:0;text-align:left}
.stacks.data tbody tr+tr>*{border:0}
.stacks tbody th::before,.stacks tbody td::before{content:attr(data-label);color:var(--soft);font-size:.875rem;font-weight:400}
}
@media (max-width:34rem){
.entry{grid-template-columns:minmax(0,1fr)}
.entry .figures{grid-column:1}
.arrange label{flex-basis:100%}
}
@media print{
.arrange{display:none}
.entry{padding:10px 0;grid-template-columns:150px minmax(0,1fr) 15rem;gap:4px 20px}
.entry .figures{grid-column:auto;display:block}
body{max-width:none;padding:0;font-size:10.5pt}
a{color:inherit;text-decoration:none}
tr,figure,.entry{break-inside:avoid}
h2,h3{break-after:avoid}
.data thead button::after{content:''}
.picture svg{border:0}
}
`;

function inks(of: Inks): string {
  return Object.entries(of)
    .map(([name, ink]) => `--${name}:${ink};`)
    .join('');
}
