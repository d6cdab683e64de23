import { describe, expect, it } from 'vitest';
import type { PictureDials } from '../../src/protocol/separating';
import { isFromPicturePage } from '../../src/protocol/separating-guard';

const DIALS: PictureDials = {
  width: 148,
  colours: 4,
  paints: ['#e7c388'],
  detail: 1.2,
  follow: undefined,
  ground: '#ffffff',
  leaveOut: ['#81a3ad', [10, 10.5, 30, 20]],
  outline: true,
  merged: [['#81a3ad', '#6a8f9b']],
  order: ['#e7c388'],
  bridges: false,
};
const separate = (changed: object) => ({ type: 'separate', id: 3, dials: { ...DIALS, ...changed } });

describe('what the page of a picture says is taken', () => {
  it.each([
    { type: 'ready' },
    { type: 'stop' },
    { type: 'chooseFolder' },
    { type: 'write', id: 4, dials: DIALS },
    separate({}),
    separate({ detail: undefined, ground: undefined }),
  ])('%j', (message) => expect(isFromPicturePage(message)).toBe(true));
});

describe('anything else is not', () => {
  it.each([
    undefined,
    null,
    'ready',
    {},
    { type: 'toString' },
    { type: '__proto__' },
    { type: 'ready', more: 1 },
    { type: 'write', dials: DIALS },
    { type: 'write', id: -1, dials: DIALS },
    { type: 'write', id: 4, dials: DIALS, folder: '/etc' },
    { type: 'chooseFolder', folder: '/etc' },
    separate({ width: 0 }),
    separate({ width: '148mm' }),
    separate({ width: Infinity }),
    separate({ width: NaN }),
    separate({ colours: 0 }),
    separate({ colours: 25 }),
    separate({ colours: 2.5 }),
    separate({ paints: ['red'] }),
    separate({ paints: ['#ff0000" onload="'] }),
    separate({ paints: Array.from({ length: 25 }, () => '#000000') }),
    separate({ detail: 0 }),
    separate({ ground: '' }),
    separate({ leaveOut: [[1, 2, 3]] }),
    separate({ leaveOut: [[1, 2, 3, -4]] }),
    separate({ leaveOut: [[1, 2, 3, 4, 5]] }),
    separate({ merged: [['#000000']] }),
    separate({ merged: [['#000000', '#ffffff', '#ffffff']] }),
    separate({ bridges: 1 }),
    separate({ picture: '../secret.png' }),
  ])('%j', (message) => expect(isFromPicturePage(message)).toBe(false));
});
