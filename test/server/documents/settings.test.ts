import { expect, test } from 'vitest';
import { DEFAULT_SETTINGS, readSettings } from '../../../src/server/documents/settings';

test('settings are taken as sent', () => {
  const severity = { 'thin-bridge': 'hint', 'bare-gap': 'off' } as const;
  expect(readSettings({ run: 'manual', delay: 0, severity })).toEqual({ run: 'manual', delay: 0, severity });
});

test.each([
  [undefined],
  [null],
  ['onSave'],
  [{}],
  [{ run: 'never', delay: '5' }],
  [{ delay: -1 }],
  [{ delay: NaN }],
  [{ severity: 'off' }],
  [{ severity: { 'thin-bridge': 'loud' } }],
])('what is missing or odd takes its default: %j', (sent) => expect(readSettings(sent)).toEqual(DEFAULT_SETTINGS));

test('nobody waits for hours', () => {
  expect(readSettings({ delay: 1e9 }).delay).toBe(10_000);
});
