import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { say } from '../start/say.ts';

/** As root on Debian: installs packages. False elsewhere, or when it could not. */
export function installFromDebian(packages: readonly string[]): boolean {
  if (process.getuid?.() !== 0 || !existsSync('/etc/debian_version') || !existsSync('/usr/bin/apt-get'))
    return false;
  say(`Installing ${packages.join(', ')} from Debian's packages`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const install = () =>
    spawnSync('apt-get', ['install', '-y', '--no-install-recommends', ...packages], { env, stdio: 'ignore' });
  if (install().status === 0) return true;
  spawnSync('apt-get', ['update'], { env, stdio: 'ignore' });
  return install().status === 0;
}
