import { describe, expect, it } from 'vitest';
import { parseAcceleration, parseDensity, parseSpeed, parseStiffness } from '../../src/config/quantity';

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
