/**
 * What a value from outside must look like.
 *
 * @returns the place of the first part that looks otherwise (`result.voltage.rmsV`); null where none does.
 */
export type Shape = (value: unknown, place: string) => string | null;

/** Any text up to a length; longer than anybody writes, short enough to be set in lines. */
export function text(most: number = 20_000): Shape {
  return (value, place) => (typeof value === 'string' && value.length <= most ? null : place);
}

const hexadecimal = /^[0-9a-f]{64}$/;

/** A SHA-256, lower-case hexadecimal. */
export const digest: Shape = (value, place) =>
  typeof value === 'string' && hexadecimal.test(value) ? null : place;

export const flag: Shape = (value, place) => (typeof value === 'boolean' ? null : place);

/** A finite number; JSON may hold ones that are not. */
export function number(least: number = -Number.MAX_VALUE, most: number = Number.MAX_VALUE): Shape {
  return (value, place) => (typeof value === 'number' && value >= least && value <= most ? null : place);
}

export function whole(least: number, most: number): Shape {
  const inRange = number(least, most);
  return (value, place) => (Number.isInteger(value) ? inRange(value, place) : place);
}

export function oneOf(...values: readonly unknown[]): Shape {
  return (value, place) => (values.includes(value) ? null : place);
}

export function orNone(shape: Shape): Shape {
  return (value, place) => (value === null ? null : shape(value, place));
}

/** A list of parts of one shape. */
export function list(shape: Shape, least: number = 0, most: number = 10_000): Shape {
  return (value, place) => {
    if (!Array.isArray(value) || value.length < least || value.length > most) return place;
    for (const [i, part] of value.entries()) {
      const wrong = shape(part, `${place}.${i}`);
      if (wrong !== null) return wrong;
    }
    return null;
  };
}

export type Parts = Readonly<Record<string, Shape>>;

/** Parts by their names: those that must be there, those that may; a name of neither is nobody's business here. */
export function parts(needed: Parts, possible: Parts = {}): Shape {
  return (value, place) => {
    if (!isRecord(value)) return place;
    for (const [name, shape] of Object.entries({ ...needed, ...possible })) {
      const part = Object.hasOwn(value, name) ? value[name] : undefined;
      if (part === undefined && name in possible) continue;
      const wrong = shape(part, place === '' ? name : `${place}.${name}`);
      if (wrong !== null) return wrong;
    }
    return null;
  };
}

/** Each part of one shape, whatever its name. */
export function partsAlike(shape: Shape): Shape {
  return (value, place) => {
    if (!isRecord(value)) return place;
    for (const [name, part] of Object.entries(value)) {
      const wrong = shape(part, `${place}.${name}`);
      if (wrong !== null) return wrong;
    }
    return null;
  };
}

/** A number with its uncertainty, or why there is none. */
export const figure: Shape = (value, place) => {
  const isMissing = isRecord(value) && value.value === null;
  return (isMissing ? missing : measured)(value, place);
};
const measured = parts({ value: number(), uncertainty: number(0) }, { notAbove: number() });
const missing = parts({ value: oneOf(null), reason: text() });

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
