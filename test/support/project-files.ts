import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';

/**
 * Files that belong to the project: what git tracks or would track, so that a work tree's own clutter does not count. On
 * a machine without git, everything but what it is told to ignore.
 */
export function projectFiles(project: string): readonly string[] {
  try {
    const told = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard'], {
      cwd: project,
      encoding: 'utf8',
    });
    return told.split('\n').filter(file => file !== '' && file !== 'node_modules');
  } catch (failure) {
    if ((failure as NodeJS.ErrnoException).code !== 'ENOENT') throw failure;
    return filesBelow(project, ignoredBy(readFileSync(join(project, '.gitignore'), 'utf8')))
      .map(file => relative(project, file))
      .sort();
  }
}

/** Names, some after a `/`, and endings after a `*`: all that the project's own list uses. */
const ignoredBy =
  (list: string) =>
  (name: string): boolean =>
    ['.git', ...list.split('\n')].some(
      line => line !== '' && (line.startsWith('*') ? name.endsWith(line.slice(1)) : name === line.replace(/^\//, '')),
    );

const filesBelow = (folder: string, isIgnored: (name: string) => boolean): readonly string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap(entry => {
    if (isIgnored(entry.name)) return [];
    const path = join(folder, entry.name);
    return entry.isDirectory() ? filesBelow(path, isIgnored) : [path];
  });
