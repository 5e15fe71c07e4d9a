import { options } from '../../assay/options/options.ts';
import {
  digest,
  figure,
  flag,
  list,
  number,
  oneOf,
  orNone,
  parts,
  type Shape,
  text,
} from '../../base/shape.ts';
import { resultShape } from './resultShape.ts';

const { claims, ...others } = Object.fromEntries(
  Object.entries(options).map(([key, { carried }]) => [key, carried]),
);

/** What was told of a capture, as a sheet carries it: within what options may be. */
const optionsShape: Shape = parts(
  { claims: claims! },
  { ...others, isResistiveFullStep: flag, scalesInPlace: flag },
);

/**
 * What a sheet carries, by the kind of its picture: as much as is read of it. Names that are not known here are let
 * through, for later versions add some.
 */
export const evidenceShape: Shape = (value, place) => {
  const wrong = plain(value, place) ?? carried(value, place);
  if (wrong !== null) return wrong;
  const { picture } = value as { readonly picture: keyof typeof byPicture };
  return byPicture[picture](value, place);
};

/** Numbers that are finite and texts that somebody may have written, whatever they are called. */
function plain(value: unknown, place: string): string | null {
  if (typeof value === 'number') return number()(value, place);
  if (typeof value === 'string') return text()(value, place);
  if (typeof value !== 'object' || value === null) return null;
  for (const [name, part] of Object.entries(value)) {
    const wrong = plain(part, place === '' ? name : `${place}.${name}`);
    if (wrong !== null) return wrong;
  }
  return null;
}

const any: Shape = () => null;

/** Far more points than a picture is wide. */
const drawnValues = list(orNone(number()), 0, 20_000);
const drawnTimes = list(number(), 0, 20_000);
/** Half cycles of a record of hours. */
const courseValues = list(number(), 0, 2_000_000);

const oneCapture: Shape = parts({
  options: optionsShape,
  result: resultShape,
  method: list(text()),
  trace: parts({
    timeS: drawnTimes,
    wave: drawnValues,
    ideal: drawnTimes,
    unit: oneOf('V', 'A'),
  }),
  dynamics: orNone(
    parts({
      ...{ timeS: courseValues, rmsHalfCycle: courseValues },
      steps: list(parts({})),
      events: list(parts({ kind: text() })),
      curves: list(parts({})),
      distortion: orNone(parts({ beforePercent: figure, afterPercent: figure })),
      instantaneous: orNone(parts({ timeS: drawnTimes, volts: drawnValues })),
    }),
  ),
});

const toldLoad = parts(
  { loadW: orNone(number()) },
  { battery: parts({}, { percent: number(), directV: number() }), note: text() },
);
const toldStep = parts(
  { fromW: orNone(number()), toW: orNone(number()), resistive: orNone(flag) },
  { note: text() },
);
const capture = { file: text(), sha256: digest, options: optionsShape };
const energy = parts({ ratedWh: number(), dcWh: orNone(figure), acWh: orNone(figure) }, { note: text() });
const toldUnit = parts({
  ...{ name: text(), label: text(), rule: oneOf('guarded', 'simple'), claims: list(text(1000)) },
  sweep: list(parts({ ...capture, told: toldLoad })),
  steps: list(parts({ ...capture, told: toldStep })),
  transfers: list(parts(capture, { note: text(), direction: text(200) })),
  energy: list(energy),
});

const onset = { atW: figure, betweenW: orNone(list(number(), 2, 2)), shownBy: text() };
const claim = parts({ text: text(), outcome: text(), quantity: text() });
const point = parts(
  {
    ...{ file: text(), sha256: digest, loadW: figure, currentA: figure, rmsV: figure },
    ...{ frequencyHz: figure, thdPercent: figure, crestFactor: figure, kind: text() },
    ...{ atTheEdge: flag, overload: flag, outcome: orNone(text()) },
  },
  { lost: text() },
);
const overload = parts({
  loadW: figure,
  heldS: figure,
  rmsV: figure,
  heldAtLeast: flag,
  lost: flag,
  seen: text(),
});
const transferSide = parts({
  ...{ direction: orNone(text(200)), count: number(0), held: number(0) },
  ...{ shortestS: figure, longestS: figure },
});
const unit = parts(
  {
    ...{ name: text(), label: text(), nominal: orNone(parts({ voltageV: number(), frequencyHz: number() })) },
    ...{ ratedW: orNone(number()), points: list(point) },
    regulation: parts({ regulationPercent: figure }),
    droop: parts({
      ...{ outputImpedanceOhm: figure, openCircuitV: figure, droopPercent: figure },
      fittedLoadsW: list(number()),
    }),
    clipping: parts(onset),
    leavesRange: parts({ ...onset, range: orNone(parts({ limit: parts({}), from: text() })) }),
    claims: list(claim),
    steps: list(parts({ file: text() })),
    transfers: list(parts({ file: text() })),
    energy: list(parts({ ratedWh: number(), dcWh: figure, acWh: figure })),
    notices: list(parts({ code: text(), message: text() })),
  },
  { earlier: text(), overloads: list(overload), transferSides: list(transferSide) },
);

const compared = parts({ file: text(), sha256: digest }, { label: text(), load: text() });
const comparison = parts({
  ...{ a: compared, b: compared, sameInstrument: flag },
  kind: parts({ a: text(), b: text(), significant: orNone(flag) }),
  differences: list(
    parts({
      ...{ key: text(), quantity: text(), unit: text() },
      ...{ a: figure, b: figure, difference: figure, significant: orNone(flag) },
    }),
  ),
  claims: list(parts({ text: text(), a: text(), b: text() })),
  notices: list(parts({ code: text(), message: text() })),
});

const byPicture = {
  wave: oneCapture,
  changes: oneCapture,
  card: (value, place) => oneCapture(value, place) ?? parts({ theme: oneOf('light', 'dark') })(value, place),
  overlay: parts({
    ...{ sides: list(oneCapture, 2, 2), basis: oneOf('budgets', 'results'), result: comparison },
  }),
  // One unit is told of; none, and nothing can be measured again.
  sweep: parts({ told: list(toldUnit, 0, 1), result: unit }, { card: oneOf('light', 'dark') }),
  comparison: parts(
    {
      told: list(toldUnit),
      result: parts({
        units: list(unit, 0, 1000),
        comparison: list(parts({ quantity: text(), name: text(), unit: text(), figures: list(figure) })),
        failures: list(parts({ file: text(), error: parts({ code: text(), message: text() }) })),
      }),
    },
    { card: oneOf('light', 'dark') },
  ),
} as const satisfies Readonly<Record<string, Shape>>;

const carried = parts({
  ...{ schema: oneOf('sineassay/sheet@1'), program: text(100), picture: oneOf(...Object.keys(byPicture)) },
  ...{ resultSha256: any, evidenceSha256: any, pictureSha256: any },
  result: parts({}),
});
