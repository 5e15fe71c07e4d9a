import * as v from 'valibot';
import { claimSchema, failureSchema } from '../assay/resultSchema.ts';
import type { Figure } from '../base/figure.ts';
import {
  alike,
  count,
  digest,
  figure,
  finite,
  list,
  notice,
  optional,
  type Schema,
  text,
} from '../base/schema.ts';
import type { EnergyDocument, EnergyResult, RunResult } from './energyDocument.ts';

const run: Schema<RunResult<Figure<string>>> = v.looseObject({
  kind: v.picklist(['discharge', 'charge', 'idle', 'off', 'cycling']),
  ...alike(['fromS', 'toS'], finite),
  ...alike(['durationS', 'energyWh', 'chargeAh', 'meanPowerW', 'maxPowerW', 'meanVoltageV'], figure),
  ...alike(['startVoltageV', 'endVoltageV', 'rate'], figure),
  ...optional({
    charge: v.looseObject(alike(['ccS', 'cvS', 'to80S', 'toFullS', 'sources'], figure)),
    idle: v.looseObject(alike(['powerW', 'emptiesInH', 'autoOffAfterS'], figure)),
    cycle: v.looseObject(alike(['periodS', 'onPercent', 'lostWh'], figure)),
  }),
});

/** The result of one log. */
const energyResultSchema: Schema<EnergyResult> = v.looseObject({
  ...{ file: text(), sha256: digest, ...optional({ label: text() }) },
  log: v.looseObject({
    ...{ rows: count, ...optional({ startTime: text() }), durationS: finite },
    side: v.nullable(v.picklist(['ac', 'dc'])),
    layout: text(),
    columns: list(
      v.looseObject({
        name: text(),
        quantity: v.picklist([
          ...(['time', 'voltage', 'current', 'power', 'energy', 'charge', 'temperature'] as const),
          ...([
            'power factor',
            'apparent power',
            'frequency',
            'mode',
            'metric',
            'row number',
            'other',
          ] as const),
        ]),
        unit: text(),
      }),
    ),
  }),
  runs: list(run, 1_000_000),
  gaps: list(
    v.looseObject({
      ...alike(['fromS', 'toS'], finite),
      energyWh: v.looseObject(alike(['min', 'max'], v.nullable(finite))),
    }),
    1_000_000,
  ),
  counters: list(
    v.looseObject({
      name: text(),
      ...alike(['energyWh', 'ratioPercent'], figure),
      ...optional({ chargeAh: figure }),
    }),
  ),
  ratios: v.looseObject(
    optional(
      alike(
        ['usableSharePercent', 'outletSharePercent', 'usableChargeSharePercent', 'roundTripPercent'],
        figure,
      ),
    ),
  ),
  claims: list(claimSchema),
  notices: list(notice),
});

/** The document of `energy`. */
export const energySchema: Schema<EnergyDocument> = v.looseObject({
  schema: v.literal('sineassay/energy@1'),
  results: list(v.union([energyResultSchema, failureSchema])),
  ...optional({
    together: v.looseObject(optional(alike(['conversionEfficiencyPercent', 'roundTripPercent'], figure))),
  }),
});
