import { describe, expect, it } from 'vitest';
import {
  formatArea,
  formatMillimetres,
  parseAcceleration,
  parseDensity,
  parseLength,
  parseSpeed,
  parseStiffness,
} from '../../src/config/values';

describe('parseLength', () => {
  // CSS Values and Units 4, "Absolute Lengths": 1in = 2.54cm = 96px, 6pc = 72pt = 1in, 40Q = 1cm.
  it.each([
    ['1in', 25.4],
    ['2.54cm', 25.4],
    ['96px', 25.4],
    ['6pc', 25.4],
    ['72pt', 25.4],
    ['40Q', 10],
    ['148mm', 148],
    [' .5 MM ', 0.5],
    ['1e1mm', 10],
    ['-2mm', -2],
  ])('%s is %f mm', (text, millimetres) => expect(parseLength(text)).toBeCloseTo(millimetres, 12));

  it.each(['', '5', 'mm', '5em', '5 %', '1,5mm', '5mm 3', '1e999mm'])('%j is no length', (text) => {
    expect(parseLength(text)).toBeUndefined();
  });
});

describe('quantities', () => {
  it.each([
    [parseSpeed, '20mm/s', 20],
    [parseSpeed, ' 1200 mm/min ', 20],
    [parseSpeed, '1 in / s', 25.4],
    [parseAcceleration, '500mm/s²', 500],
    [parseAcceleration, '0.5cm/s2', 5],
    [parseAcceleration, '5 mm / s^2', 5],
    [parseStiffness, '3000MPa', 3000],
    [parseStiffness, '4.5 GPa', 4500],
    [parseDensity, '800kg/m³', 800],
    [parseDensity, '0.8 g/cm3', 800],
  ])('%o reads %s as %d', (parse, text, value) => expect(parse(text)).toBeCloseTo(value, 9));

  it.each([
    [parseSpeed, '20'],
    [parseSpeed, '20mm'],
    [parseSpeed, '20/s'],
    [parseSpeed, '20mm/h'],
    [parseSpeed, '20mm/s2'],
    [parseAcceleration, '500mm/s'],
    [parseAcceleration, '500'],
    [parseStiffness, '3000'],
    [parseStiffness, '3000mm'],
    [parseStiffness, '3 constructor'],
    [parseDensity, '800kg'],
    [parseDensity, '1e999kg/m3'],
  ])('%o does not take %s', (parse, text) => expect(parse(text)).toBeUndefined());
});

describe('formatMillimetres', () => {
  it('shows hundredths', () => expect(formatMillimetres(0.8)).toBe('0.80 mm'));
});

describe('formatArea', () => {
  it.each([
    [272.84, '272.8 mm²'],
    [1, '1.0 mm²'],
    [0.31, '0.31 mm²'],
    [0.001, '0.0010 mm²'],
    [0.00099, 'under 0.001 mm²'],
    [5e-9, 'under 0.001 mm²'],
    [0, 'under 0.001 mm²'],
  ])('tells %d as %s', (area, text) => expect(formatArea(area)).toBe(text));
});
