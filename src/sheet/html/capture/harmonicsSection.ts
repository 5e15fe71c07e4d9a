import type { CurrentFigures, MeasureResult, VoltageFigures } from '../../../verdict/measureDocument.ts';
import { decimalText } from '../../numbers/decimalText.ts';
import { uncertaintyDecimals } from '../../numbers/uncertaintyDecimals.ts';
import { dataTable } from '../dataTable.ts';
import { html, type Markup } from '../html.ts';

/** The harmonics of voltage and current, a table each; nothing where there is none. */
export function harmonicsSection({ voltage, current }: MeasureResult): Markup {
  const tables = [
    ...(voltage === undefined ? [] : harmonicTables(voltage, 'Voltage')),
    ...(current === undefined ? [] : harmonicTables(current, 'Current')),
  ];
  if (tables.length === 0) return html``;
  return html`<section><h2>Harmonics</h2>${tables}</section>
`;
}

function harmonicTables({ channel, harmonics }: VoltageFigures | CurrentFigures, quantity: string): Markup[] {
  const [first] = harmonics;
  if (first === undefined) return [];
  const unit = 'rmsV' in first ? 'V' : 'A';
  const table = dataTable({
    caption: `${quantity}, channel ${channel}; phase against a rising zero of the fundamental`,
    columns: [
      { heading: 'Order', isNumber: true },
      { heading: `RMS, ${unit}`, isNumber: true },
      { heading: '% of fundamental', isNumber: true },
      { heading: '±', isNumber: true },
      { heading: 'Phase, °', isNumber: true },
    ],
    rows: harmonics.map((harmonic) => {
      const { order, percent, uncertaintyPercent = null, phaseDeg } = harmonic;
      const rms = 'rmsV' in harmonic ? harmonic.rmsV : harmonic.rmsA;
      const decimals = uncertaintyPercent === null ? 3 : Math.min(4, uncertaintyDecimals(uncertaintyPercent));
      return [
        { shown: order, sort: order },
        { shown: decimalText(rms, 4), sort: rms },
        { shown: decimalText(percent, decimals), sort: percent },
        {
          shown: uncertaintyPercent === null ? '' : decimalText(uncertaintyPercent, decimals),
          sort: uncertaintyPercent,
        },
        { shown: decimalText(phaseDeg, 1), sort: phaseDeg },
      ];
    }),
  });
  return [table];
}
