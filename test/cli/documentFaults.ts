import { figuresIn } from '../../src/measure/figures.ts';

/** What is wrong with a value at a path; none: it is as it should be. */
type Check = (value: unknown, path: string) => readonly string[];

/**
 * What in the document of `measure --json` departs from its contract, key by key.
 *
 * @returns a line for each fault, with the path to it.
 */
export function documentFaults(document: unknown): readonly string[] {
  return measureDocument(document, '$');
}

const fault = (path: string, expected: string): readonly string[] => [`${path}: ${expected} expected`];

const number: Check = (value, path) =>
  typeof value === 'number' && Number.isFinite(value) ? [] : fault(path, 'a number');

const whole: Check = (value, path) => (Number.isInteger(value) ? [] : fault(path, 'a whole number'));

const notNegative: Check = (value, path) =>
  typeof value === 'number' && value >= 0 ? [] : fault(path, 'a number from 0 up');

const text: Check = (value, path) => (typeof value === 'string' && value !== '' ? [] : fault(path, 'text'));

const anyText: Check = (value, path) => (typeof value === 'string' ? [] : fault(path, 'text'));

const yesNo: Check = (value, path) => (typeof value === 'boolean' ? [] : fault(path, 'true or false'));

const oneOf =
  (...known: readonly unknown[]): Check =>
  (value, path) =>
    known.includes(value) ? [] : fault(path, `one of ${known.join(', ')}`);

const orNull =
  (check: Check): Check =>
  (value, path) =>
    value === null ? [] : check(value, path);

const list =
  (check: Check): Check =>
  (value, path) =>
    Array.isArray(value) ? value.flatMap((entry, i) => check(entry, `${path}[${i}]`)) : fault(path, 'a list');

const object =
  (required: Readonly<Record<string, Check>>, optional: Readonly<Record<string, Check>> = {}): Check =>
  (value, path) => {
    if (value === null || typeof value !== 'object' || Array.isArray(value)) return fault(path, 'an object');
    const entries = new Map<string, unknown>(Object.entries(value));
    const known = { ...required, ...optional };
    return [
      ...Object.keys(required).flatMap((key) => (entries.has(key) ? [] : fault(`${path}.${key}`, 'a value'))),
      // Keys that are not known here may be added, never in place of one that is.
      ...[...entries].flatMap(([key, entry]) => known[key]?.(entry, `${path}.${key}`) ?? []),
    ];
  };

const measuredFigure = object({ value: number, uncertainty: notNegative }, { notAbove: number });
const missingFigure = object({ value: oneOf(null), reason: text });

const figure: Check = (value, path) =>
  (value !== null && typeof value === 'object' && 'reason' in value ? missingFigure : measuredFigure)(
    value,
    path,
  );

const span: Check = (value, path) =>
  Array.isArray(value) && value.length === 2 && value[0] < value[1] ? [] : fault(path, '[from, to]');

/** Orders 1 to thdOrders without a hole, the fundamental at 100 % and phase 0. */
function harmonics(unit: 'V' | 'A'): Check {
  const one = object(
    { order: whole, [`rms${unit}`]: notNegative, percent: notNegative, phaseDeg: number },
    { uncertaintyPercent: notNegative, notAbovePercent: notNegative },
  );
  return (value, path) => {
    const faults = list(one)(value, path);
    if (faults.length > 0 || !Array.isArray(value)) return faults;
    return value.flatMap(({ order, percent, phaseDeg }, i) => [
      ...(order === i + 1 ? [] : fault(`${path}[${i}].order`, `${i + 1}`)),
      ...(phaseDeg > -180 && phaseDeg <= 180
        ? []
        : fault(`${path}[${i}].phaseDeg`, 'a phase in (−180, 180]')),
      ...(i > 0 || (phaseDeg === 0 && percent === 100) ? [] : fault(`${path}[0]`, '100 % at phase 0')),
    ]);
  };
}

function channelFigures(unit: 'V' | 'A'): Check {
  const check = object({
    ...Object.fromEntries(figuresIn(unit).map(({ key }) => [key, figure])),
    channel: text,
    spanS: span,
    cyclesUsed: notNegative,
    thdOrders: whole,
    harmonics: harmonics(unit),
  });
  return (value, path) => {
    const faults = check(value, path);
    if (faults.length > 0) return faults;
    const { thdOrders, harmonics: all } = value as { thdOrders: number; harmonics: unknown[] };
    return all.length === 0 || all.length === thdOrders ? [] : fault(path, 'a harmonic for each order');
  };
}

const limit = object({}, { min: number, max: number });
const decided = ['pass', 'conditional pass', 'conditional fail', 'fail'];

const result = object(
  {
    file: text,
    sha256: (value, path) =>
      typeof value === 'string' && /^[0-9a-f]{64}$/.test(value) ? [] : fault(path, 'a SHA-256'),
    capture: object({
      samples: whole,
      sampleRateHz: number,
      startS: number,
      durationS: number,
      bits: orNull(number),
      channels: list(
        object({ name: text, quantity: oneOf('voltage', 'current', 'other'), unit: anyText, scale: number }),
      ),
      layout: text,
    }),
    nominal: orNull(object({ voltageV: number, frequencyHz: number, inferred: yesNo })),
    waveform: object({
      kind: oneOf('pure sine', 'distorted sine', 'modified sine', 'stepped', 'square', 'not classified'),
      reasons: list(text),
      levels: whole,
      atTheEdge: yesNo,
    }),
    claims: list(
      object(
        {
          text,
          quantity: text,
          value: orNull((value, path) => (typeof value === 'string' ? text : number)(value, path)),
          limit: orNull(limit),
          outcome: oneOf(...decided, 'not judged'),
          probability: orNull((value, path) =>
            typeof value === 'number' && value >= 0 && value <= 1 ? [] : fault(path, '0 to 1'),
          ),
        },
        { reason: text },
      ),
    ),
    findings: list(
      object(
        {
          standard: text,
          edition: anyText,
          clause: anyText,
          quantity: text,
          value: number,
          limit,
          margin: number,
          outcome: oneOf(...decided, 'information'),
          side: oneOf('inside', 'outside'),
          provenance: oneOf('public', 'memory'),
        },
        { remark: text },
      ),
    ),
    notices: list(object({ code: text, message: text })),
  },
  {
    label: text,
    load: text,
    loadSeen: object({ from: oneOf('measured', 'told', 'file name'), text, watts: orNull(notNegative) }),
    voltage: channelFigures('V'),
    current: channelFigures('A'),
    meter: object({
      readingV: number,
      answer: oneOf('scale', 'average', 'calibrated'),
      factor: number,
      message: text,
    }),
  },
);

const failure = object({
  file: text,
  error: object(
    { code: text, message: text },
    { line: whole, column: whole, expected: text, received: text, advice: text },
  ),
});

const measureDocument = object({
  schema: oneOf('sineassay/measure@1'),
  results: list((value, path) =>
    (value !== null && typeof value === 'object' && 'error' in value ? failure : result)(value, path),
  ),
});
