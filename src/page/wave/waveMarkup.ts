import { html, type Markup } from '../../entry/sections.ts';

/** The picture of a wave with all that moves and marks it. */
export const waveMarkup: Markup = html`<div class="wave-view" tabindex="0" role="group" aria-label="The wave, to look closer and to mark" aria-describedby="wave-keys"><svg role="img"></svg></div>
<div class="actions wave-actions">
<button type="button" data-move="earlier">Earlier</button><button type="button" data-move="later">Later</button>
<button type="button" data-move="closer">Closer</button><button type="button" data-move="wider">Wider</button>
<button type="button" data-move="cycles">Two cycles</button><button type="button" data-move="record">Whole record</button>
</div>
<div class="fields wave-marks">
<div class="field"><label for="mark-a">First mark, <span class="mark-unit"></span></label><input id="mark-a" type="text" inputmode="decimal"></div>
<div class="field"><label for="mark-b">Second mark, <span class="mark-unit"></span></label><input id="mark-b" type="text" inputmode="decimal"></div>
<button type="button" data-move="clear">No marks</button>
</div>
<p class="wave-between" aria-live="polite"></p>
<p id="wave-keys" class="soft"><small>Keys while the picture has the focus: arrows move, + and − look closer and wider, Home shows two cycles, End the whole record. The wheel does too then; drag to move, click to mark.</small></p>
`;
