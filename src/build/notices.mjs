// The licences of what is bundled, made from what esbuild says it has bundled: nothing is in a bundle that is not named here.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { dist, root } from './bundles.mjs';

const HEAD = `Third-party notices

This package contains the following software, under the licences that follow its name.
`;

/** The folders of the packages that files come from, sorted by name. @param inputs paths from the repository's root */
export function packagesOf(inputs) {
  const folders = inputs.flatMap((input) => /^.*node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(input)?.[0] ?? []);
  return [...new Set(folders)].sort((a, b) => nameOf(a).localeCompare(nameOf(b), 'en'));
}

const nameOf = (folder) => folder.slice(folder.lastIndexOf('node_modules/') + 'node_modules/'.length);

/**
 * The notices as path and contents.
 * @param inputs paths from the repository's root
 * Throws where a package says nothing of its licence.
 */
export function notices(inputs) {
  const entries = packagesOf(inputs).map((folder) => entryOf(path.join(root, folder)));
  return { path: path.join(dist, 'THIRD-PARTY-NOTICES.txt'), contents: [HEAD, ...entries].join('\n') };
}

function entryOf(folder) {
  const { name, version, license, homepage, author } = JSON.parse(
    readFileSync(path.join(folder, 'package.json'), 'utf8'),
  );
  const texts = licenceFiles(folder).map((file) => readFileSync(file, 'utf8').trim());
  if (license === undefined && texts.length === 0) throw new Error(`${name} says nothing of its licence.`);
  const facts = [`${name} ${version}`, license && `Licence: ${wordsOf(license)}`, homepage && `Home: ${homepage}`];
  const by = author && `Author: ${typeof author === 'string' ? author : author.name}`;
  const head = [...facts, by].filter(Boolean).join('\n');
  return `${'-'.repeat(80)}\n${[head, ...texts].join('\n\n')}\n`;
}

const wordsOf = (licence) => (typeof licence === 'string' ? licence : licence.type);

function licenceFiles(folder) {
  const isLicence = (name) => /^(?:licen[cs]e|copying|notice|third-?party)[\w.-]*$/i.test(name);
  const inFolder = (at) => (existsSync(at) ? readdirSync(at, { withFileTypes: true }) : []);
  const files = inFolder(folder).filter((entry) => entry.isFile() && isLicence(entry.name));
  return files.map(({ name }) => path.join(folder, name)).sort();
}
