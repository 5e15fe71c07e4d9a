import {
  digest,
  figure,
  flag,
  list,
  number,
  oneOf,
  orNone,
  type Parts,
  parts,
  type Shape,
  text,
  whole,
} from '../../base/shape.ts';
import { figuresIn } from '../../measure/figures.ts';

const limit = parts({}, { min: number(), max: number() });

/** A channel's section, keys ending in its unit. */
function channelShape(unit: 'V' | 'A'): Shape {
  // A sheet of an earlier version has no figure that was added since.
  const shapes = (isDrawn: boolean): Parts =>
    Object.fromEntries(
      figuresIn(unit)
        .filter(({ drawn = false }) => drawn === isDrawn)
        .map(({ key }) => [key, figure]),
    );
  return parts(
    {
      channel: text(),
      spanS: list(number(), 2, 2),
      cyclesUsed: number(0),
      thdOrders: whole(0, 1000),
      ...shapes(true),
      harmonics: list(
        parts({ order: whole(0, 1000), [`rms${unit}`]: number(), percent: number(), phaseDeg: number() }),
        0,
        1000,
      ),
    },
    {
      ...shapes(false),
      harmonicGroups: parts({
        orders: list(parts({ order: number() })),
        threeSeconds: list(list(parts({}))),
      }),
      highBands: parts({
        bands: list(parts({ centreHz: number(), widthHz: number(), [`rms${unit}`]: number() })),
        ripple: orNone(parts({ frequencyHz: figure, [`rms${unit}`]: figure })),
      }),
    },
  );
}

/** The result of one capture, as much as is read of it. */
export const resultShape: Shape = parts(
  {
    file: text(),
    sha256: digest,
    capture: parts({
      ...{ samples: number(0), sampleRateHz: number(), startS: number(), durationS: number() },
      bits: orNone(number()),
      channels: list(parts({ name: text(), quantity: text(), unit: text(), scale: number() })),
      layout: text(),
    }),
    nominal: orNone(parts({ voltageV: number(), frequencyHz: number(), inferred: flag })),
    waveform: parts({ kind: text(200), reasons: list(text()), levels: number(0), atTheEdge: flag }),
    claims: list(
      parts(
        {
          ...{ text: text(), quantity: text(), outcome: text(200), probability: orNone(number()) },
          limit: orNone(limit),
        },
        { reason: text() },
      ),
    ),
    steps: list(parts({ atS: figure, beforeV: figure, afterV: figure, extremeV: figure })),
    events: list(parts({ kind: text(200) })),
    excursions: list(parts({ kind: text(200), startS: number(), endS: number() })),
    findings: list(
      parts(
        {
          ...{ standard: text(), edition: text(), clause: text(), quantity: text(), outcome: text(200) },
          ...{ value: number(), margin: number(), limit, provenance: oneOf('public', 'memory') },
        },
        { remark: text(), elsewhere: flag },
      ),
    ),
    notices: list(parts({ code: text(), message: text() })),
  },
  {
    ...{ label: text(), load: text(), voltage: channelShape('V'), current: channelShape('A') },
    power: parts({ channel: text(), spanS: list(number(), 2, 2), harmonics: list(parts({}), 0, 1000) }),
    loadSeen: parts({ from: oneOf('measured', 'told', 'file name'), text: text(), watts: orNone(number()) }),
    loadKind: parts({ kind: text(200), reasons: list(text()) }),
    input: parts({ voltageChannel: text(), currentChannel: text() }),
    meter: parts({ message: text() }),
  },
);
