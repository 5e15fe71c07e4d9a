import { flag, list, number, oneOf, orNone, parts, partsAlike, type Shape, text, whole } from './shape.ts';

const notZero: Shape = (value, place) => (value === 0 ? place : number()(value, place));
const positive = number(Number.MIN_VALUE);

/** What was told of a capture, as a sheet carries it: within what options may be. */
export const optionsShape: Shape = parts(
  { claims: list(text(1000), 0, 1000) },
  {
    ...{ label: text(), load: text(), voltage: text(), current: text(), rule: oneOf('guarded', 'simple') },
    ...{ orders: whole(2, 500), sineThdPercent: positive, sampleRateHz: positive },
    ...{ perWindow: flag, isResistiveFullStep: flag, scalesInPlace: flag },
    nominal: parts({}, { voltageV: positive, frequencyHz: positive, ofUnit: flag }),
    scales: list(parts({ channel: orNone(text()), factor: notZero }), 0, 1000),
    inverted: list(text(), 0, 1000),
    skews: list(parts({ channel: text(), seconds: number() }), 0, 1000),
    directInput: parts({ voltage: text(), current: text() }),
    instrument: partsAlike(orNone(number(0))),
    meter: parts({ readingV: positive, dcCoupled: flag }),
  },
);
