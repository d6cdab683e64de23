import { expect, test } from 'vitest';
import { isWellFormed } from './well-formed';

test.each([
  '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0"/></svg>',
  '<!DOCTYPE svg [<!ENTITY reed "M0 0h9">]><svg><path d="&reed;"/></svg>',
  '<svg xmlns:x="http://www.w3.org/1999/xlink"><use x:href="#a"/></svg>',
])('is well-formed: %s', (text) => {
  expect(isWellFormed(text)).toBe(true);
});

test.each([
  '',
  '<svg>',
  '<svg/><svg/>',
  '<svg a="1" a="2"/>',
  '<svg>&reed;</svg>',
  '<svg><use x:href="#a"/></svg>',
  '<svg a=1/>',
])('is not well-formed: %s', (text) => {
  expect(isWellFormed(text)).toBe(false);
});
