import { describe, expect, it } from 'vitest';
import { isLoadedAt, type LoadEvidence, loadSeen } from '../../src/assay/loadSeen.ts';

const nothing: LoadEvidence = {
  activeW: null,
  told: undefined,
  file: 'folder of 900w/wave.csv',
  elsewhereW: [],
  isLoaded: true,
};

const measured = (value: number, uncertainty: number): LoadEvidence['activeW'] => ({ value, uncertainty });

describe('loadSeen', () => {
  it('knows nothing where nobody says anything; a folder’s name is not read', () => {
    expect(loadSeen(nothing)).toEqual({ load: null, notices: [] });
    expect(loadSeen({ ...nothing, told: '  ' }).load).toBeNull();
  });

  it('takes the measured load before the told one, and that before the file’s name', () => {
    const named = { ...nothing, file: 'red/300w.csv' };
    expect(loadSeen(named).load).toEqual({ from: 'file name', text: '300 W', watts: 300 });
    const told = { ...named, told: '310 W heater' };
    expect(loadSeen(told).load).toEqual({ from: 'told', text: '310 W heater', watts: 310 });
    const all = { ...told, activeW: measured(304.26, 15) };
    expect(loadSeen(all).load).toEqual({ from: 'measured', text: '304 W', watts: 304 });
  });

  it.each([
    [1498.2, 80, '1500 W', 1500],
    [25.84, 1.2, '25.8 W', 25.8],
    [-258.4, 15, '258 W', 258],
    [0.17, 0.29, 'no load', 0],
    [1.2, 0.4, 'no load', 0],
    [3.2, 4.1, 'no load', 0],
    [20, 38.4, 'at most 58.4 W', null],
  ])('reads %s ± %s W as “%s”', (value, uncertainty, text, watts) => {
    const { load } = loadSeen({ ...nothing, activeW: measured(value, uncertainty) });
    expect(load).toEqual({ from: 'measured', text, watts });
  });

  it('doubts a load told that differs by over 20 % and by more than its doubt', () => {
    const codes = (told: string, value: number, uncertainty: number): readonly string[] =>
      loadSeen({ ...nothing, told, activeW: measured(value, uncertainty) }).notices.map(({ code }) => code);
    expect(codes('400 W', 258, 15)).toEqual(['load.differs']);
    expect(codes('300 W', 258, 15)).toEqual([]);
    expect(codes('400 W', 258, 150)).toEqual([]);
    expect(codes('no load', 258, 15)).toEqual(['load.differs']);
    expect(codes('no load', 0.3, 0.5)).toEqual([]);
    expect(codes('kettle', 258, 15)).toEqual([]);
  });

  it('names both in the doubt, and says which was told', () => {
    const [told] = loadSeen({ ...nothing, told: '400 W', activeW: measured(258, 15) }).notices;
    expect(told).toEqual({ code: 'load.differs', words: '400 W', from: 'told', measured: '258 W' });
    const [named] = loadSeen({ ...nothing, file: '400w.csv', activeW: measured(258, 15) }).notices;
    expect(named).toEqual({ code: 'load.differs', words: '400 W', from: 'file name', measured: '258 W' });
  });

  it('has no doubt where another stretch of the record has the load told', () => {
    const step = { ...nothing, told: '400 W', activeW: measured(0.3, 0.5), elsewhereW: [0.2, 391] };
    expect(loadSeen(step)).toEqual({
      load: { from: 'measured', text: 'no load', watts: 0 },
      notices: [],
    });
  });

  it('says nothing of a load told for a stretch that is without it', () => {
    expect(loadSeen({ ...nothing, told: '400 W', isLoaded: false }).load).toBeNull();
  });
});

describe('isLoadedAt', () => {
  const at = (value: number) => ({ value, uncertainty: 0.001 });

  it('is after a step on and before a step off', () => {
    expect(isLoadedAt(0.1, [{ atS: at(0.2), direction: 'on' }], [])).toBe(false);
    expect(isLoadedAt(0.3, [{ atS: at(0.2), direction: 'on' }], [])).toBe(true);
    expect(isLoadedAt(0.1, [{ atS: at(0.2), direction: 'off' }], [])).toBe(true);
    expect(isLoadedAt(0.3, [{ atS: at(0.2), direction: 'off' }], [])).toBe(false);
    expect(isLoadedAt(0.3, [], [])).toBe(true);
  });

  it('is not before the load that an event says was held', () => {
    const cutOff = { kind: 'cut-off', startS: at(0.44), heldS: at(0.14) } as const;
    expect(isLoadedAt(0.15, [], [cutOff])).toBe(false);
    expect(isLoadedAt(0.4, [], [cutOff])).toBe(true);
    expect(isLoadedAt(0.15, [], [{ ...cutOff, heldAtLeast: true }])).toBe(true);
  });
});
