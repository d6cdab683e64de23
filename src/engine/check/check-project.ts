/** The files of a project to their reports. */
import type { ProjectReport, Settings } from '../../report/report';
import { beginSession } from '../session';

/**
 * Checks the files that the configuration names in `layers`, each as a part of the whole stack. What is named but not
 * there is a fault; the rest is still checked.
 * @param files texts by the names that `projectFiles` gives; others are not looked at
 * @param earlier of an earlier state: files that are the same are not measured again, and of their checks only those
 * that read other layers are run
 * @throws Stopped when `settings.cancelled` says so
 */
export function checkProject(
  files: ReadonlyMap<string, string>,
  settings: Settings,
  earlier?: ProjectReport,
): ProjectReport {
  return (earlier?.session ?? beginSession()).checkProject(files, settings);
}
