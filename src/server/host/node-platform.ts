/** The server as a process of Node.js. */
import path from 'node:path';
import { homepage } from '../../../package.json';
import { checkPages } from '../documents/check-pages';
import { DiskFiles } from '../documents/disk-files';
import { Workspace } from '../documents/workspace';
import { engineFrom } from '../engine/start-engine';
import { MarksFolder } from '../programs/marks-folder';
import { ProgramPlaces } from '../programs/program-places';
import { NODE_FILES } from './node-files';
import type { Platform } from './platform';

/** @param folder where the server's own files are: `worker.cjs`, `checks/<id>.md` */
export function nodePlatform(folder: string): Platform {
  const workspace = new Workspace();
  return {
    startEngine: engineFrom(path.join(folder, 'worker.cjs')),
    pageOf: checkPages(path.join(folder, 'checks'), homepage),
    files: NODE_FILES,
    workspace,
    programFiles: new ProgramPlaces(workspace, new DiskFiles(NODE_FILES)),
    watchMarks: (marks, changed) => new MarksFolder(marks, changed),
  };
}
