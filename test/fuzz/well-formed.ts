/** What a strict parser says of a text. */
import { JSDOM } from 'jsdom';

const { DOMParser } = new JSDOM('').window;
const parser = new DOMParser();

/** Whether a text is well-formed XML, as jsdom's parser (saxes) judges. */
export function isWellFormed(text: string): boolean {
  return parser.parseFromString(text, 'application/xml').getElementsByTagName('parsererror').length === 0;
}
