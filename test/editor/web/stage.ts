/** The stage of the workbench, on which our extension runs in the browser's own extension host. */
import type { TestProject } from 'vitest/node';
import { raiseStage } from '../workbench/stage';

const WEB = { 'remote.extensionKind': { 'tombolo.tombolo-stencil': ['web'] } };

export default (project: TestProject): Promise<() => Promise<void>> => raiseStage(project, { settings: WEB });
