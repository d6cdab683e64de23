import { describe, expect, it } from 'vitest';
import { checkpoint, Stopped, type StopReason, underWatch } from '../../src/base/checkpoint';

const many = () => {
  for (let i = 0; i < 100_000; i += 1) checkpoint();
};

function reasonOf(run: () => void): StopReason | undefined {
  try {
    run();
    return undefined;
  } catch (error) {
    if (error instanceof Stopped) return error.reason;
    throw error;
  }
}

describe('checkpoint', () => {
  it('lets loops run on where nothing watches, and where the watch has nothing to say', () => {
    expect(reasonOf(many)).toBeUndefined();
    expect(reasonOf(() => underWatch(() => undefined, many))).toBeUndefined();
  });

  it('stops a loop in its middle, for the reason that the watch gives', () => {
    let turns = 0;
    const reason = reasonOf(() =>
      underWatch(
        () => 'cancelled',
        () => {
          for (; turns < 100_000; turns += 1) checkpoint();
        },
      ),
    );
    expect(reason).toBe('cancelled');
    expect(turns).toBeLessThan(10_000);
  });

  it('asks the outer watch too, and no watch once its run is over', () => {
    const within = () => underWatch(() => undefined, many);
    expect(reasonOf(() => underWatch(() => 'time', within))).toBe('time');
    expect(reasonOf(many)).toBeUndefined();
  });

  it('looks at once after a step that was worth many', () => {
    expect(
      reasonOf(() =>
        underWatch(
          () => 'memory',
          () => checkpoint(1_000_000),
        ),
      ),
    ).toBe('memory');
  });
});
