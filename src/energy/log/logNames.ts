import { cleanText } from '../../read/text/textAccess.ts';
import type { LogQuantity } from './energyLog.ts';
import { type LogUnit, logUnit } from './logUnits.ts';

/** What a column's name says of it. */
export interface LogName {
  /** Cleaned, with its unit; `''` where the file names none. */
  readonly full: string;
  readonly quantity: LogQuantity | null;
  readonly unit: LogUnit | null;
  /** The mean of the interval, not a reading at its end. */
  readonly isMean: boolean;
  /** What is left in a battery. */
  readonly isRemaining: boolean;
  readonly side: 'ac' | 'dc' | null;
}

/** Ways to write a unit behind a name. */
const UNIT_BEHIND: readonly RegExp[] = [
  /^(.*?)\s*[([{]([^()[\]{}]+)[)\]}]\s*$/,
  /^(.+?)\s*\/\s*([^/\s]+)$/,
  /^(.+?)\s+in\s+(\S+)$/i,
  /^(.+?)\s*[:,]\s*(\S+)$/,
  /^(t)[_\s](ms|sec|s|min|h)$/i,
  /^(.{2,}?)[_\s.-]+([A-Za-zµμ%°]{1,10})$/,
];

/** In order: the first that matches a name's words decides. */
const SAYS: readonly (readonly [pattern: RegExp, quantity: LogQuantity])[] = [
  [/\b(power factor|pf|cos ?(phi|φ)?|leistungsfaktor)\b/, 'power factor'],
  [/\b(temp(erature|eratur|érature|eratura)?|celsius)\b/, 'temperature'],
  [/\b(soc|percent(age)?|gauge|level|price|cost|tariff|resistance|ohms?|impedance)\b/, 'other'],
  [
    /\b(max(imum)?|min(imum)?|peak|highest|lowest|limit|set ?point|set|target|rated|nominal|design|full)\b/,
    'other',
  ],
  [/\b(apparent|scheinleistung)\b/, 'apparent power'],
  [/\b(reactive|blindleistung)\b/, 'other'],
  [/\b(freq(uency|uenz)?|fréquence|frecuencia)\b/, 'frequency'],
  [/\b(metric( id| name)?|parameter|entity( id)?|sensor|measurement|field|quantity|metrics)\b/, 'metric'],
  [/\b(mode|state|status|step ?(type|name)|betriebsart|zustand|état|estado|phase)\b/, 'mode'],
  [/\b(energy|energies?|énergie|energía|energia|k?wh|watt ?hours?|consumption|verbrauch|arbeit)\b/, 'energy'],
  [/\b(power|pwr|watts?|wattage|leistung|puissance|potencia|potenza|pac|pdc)\b|^[pw]( ?\d+)?$/, 'power'],
  [
    /\b(current|curr|amps?|amperes?|amperage|strom(stärke)?|courant|corriente|corrente|i(bat|bus|out|in|dc|ac))\b|^[ia]( ?\d+)?$/,
    'current',
  ],
  [
    /\b(voltage|volts?|spannung|tension|tensión|tensione|v(bat|bus|out|in|cc|dc|ac))\b|^[uv]( ?\d+)?$/,
    'voltage',
  ],
  [/\b(capacity|capa|m?ah|amp ?hours?|amp ?hrs|charge|kapazität|ladung|capacité|capacidad)\b/, 'charge'],
  [
    /\b(time|times|timestamp|date|datetime|elapsed|duration|uptime|clock|zeit|uhrzeit|datum|zeitstempel|dauer|temps|heure|hora|fecha|tiempo|tempo|ora|seconds?|secs?|minutes?|mins?|hours?|hrs?|millis(econds)?|unix( ?time)?|epoch|utc|created at|last changed)\b|time$|^(t|ts)$/,
    'time',
  ],
  [
    /^(index|idx|no|nr|#|n|sample|samples|record|record id|row|id|seq|sequence|num(ber)?|count)$/,
    'row number',
  ],
];

/**
 * Reads the name of a log's column: the quantity that its words or its unit tell.
 *
 * @example logName('Current_mA') // current, mA
 */
export function logName(cell: string): LogName {
  const full = cleanText(cell.replace(/^[#%\ufeff]+\s*/, '').replace(/^b'(.*)'$/, '$1'));
  const { name, unit } = withoutUnit(full);
  const words = wordsOf(name === '' ? full : name);
  const said = SAYS.find(([pattern]) => pattern.test(words))?.[1] ?? null;
  const all = wordsOf(full);
  return {
    full,
    quantity: quantityOf(said, unit),
    unit,
    isMean: /\b(avg|average|mean|mittel(wert)?|moyenne|media)\b/.test(words),
    isRemaining: /\b(remain(ing)?|left|now|available|rest|verbleibend)\b/.test(words),
    side: /\b(ac|outlet|mains|grid|socket|inverter|netz)\b/.test(all)
      ? 'ac'
      : /\b(dc|battery|batt?|pack|cell)\b/.test(all)
        ? 'dc'
        : null,
  };
}

/** A unit that an energy is made of decides, unless the words say that the number is something else of that kind. */
function quantityOf(said: LogQuantity | null, unit: LogUnit | null): LogQuantity | null {
  if (unit === null || said === 'other') return said;
  if (said === 'mode' || said === 'metric' || said === 'row number') return unit.quantity;
  // `Capacity (%)`: a share, no charge.
  if (unit.quantity === 'other' || unit.quantity === 'temperature') return unit.quantity;
  return unit.quantity;
}

function withoutUnit(full: string): { readonly name: string; readonly unit: LogUnit | null } {
  for (const pattern of UNIT_BEHIND) {
    const match = pattern.exec(full);
    const unit = match === null ? null : logUnit(match[2]!);
    if (unit !== null) return { name: match![1]!, unit };
  }
  // `Volts`, `mA`, `kWh`: the unit is the name. A lone letter is a name.
  const unit = full.length < 2 ? null : logUnit(full);
  return { name: unit === null ? full : '', unit };
}

function wordsOf(name: string): string {
  return name
    .replace(/([a-zà-ÿ])(?=[A-Z])|([A-Z])(?=[A-Z][a-z])/g, '$1$2 ')
    .toLowerCase()
    .replace(/[_\s.:()[\]/-]+/g, ' ')
    .trim();
}
