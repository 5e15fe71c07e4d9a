import { budgeted } from '../../measure/doubt/budget.ts';
import type { Component } from '../../measure/doubt/component.ts';
import { isProportional } from '../doubt/logMeter.ts';
import { type LogFigure, none } from '../doubt/runFigures.ts';

/** How what is measured on two sides hangs together. */
export type Meters = 'one meter' | 'two meters';

/**
 * 100 · a / b, with what both sides have in common counted once.
 *
 * One meter has one gain and one clock for both, which cancel; its offsets and steps, and all of two meters, don't.
 *
 * @see JCGM 100:2008, 5.2.2: u² = u_A² + u_B² − 2r·u_A·u_B, relative, with r = 1 for what is common.
 */
export function quotientOf(a: LogFigure, b: LogFigure, meters: Meters): LogFigure {
  if (a.value === null) return a;
  if (b.value === null) return b;
  if (b.value <= b.uncertainty)
    return none('what it would be divided by is within its own uncertainty of zero');
  const percent = (100 * a.value) / b.value;
  const isCommon = (component: Component): boolean => meters === 'one meter' && isProportional(component);
  const felt = (component: Component, factor: number, side: string): Component => ({
    ...component,
    source: isCommon(component) ? component.source : `${component.source}, ${side}`,
    sensitivity: component.sensitivity * factor,
  });
  return budgeted(percent, [
    ...a.budget.components.map((component) => felt(component, 100 / b.value, 'above')),
    ...b.budget.components.map((component) => felt(component, -percent / b.value, 'below')),
  ]);
}

/** A figure times an exact number. */
export function scaledFigure(figure: LogFigure, factor: number): LogFigure {
  if (figure.value === null) return figure;
  return budgeted(
    figure.value * factor,
    figure.budget.components.map((component) => ({
      ...component,
      sensitivity: component.sensitivity * factor,
    })),
  );
}
