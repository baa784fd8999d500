import { spawnSync } from 'node:child_process';

/**
 * Whether a program that a check compares with is on this machine. Where it is missing the check is skipped, visibly,
 * with the line that installs it; with DIEWRIGHT_REQUIRE_TOOLS=1 its absence is a failure.
 */
export function outsideTool(
  name: string,
  probe: readonly string[],
  install: string,
): { readonly missing: boolean } {
  const [command = '', ...options] = probe;
  const reply = spawnSync(command, options, { encoding: 'utf8' });
  const missing = reply.error !== undefined || reply.status !== 0;
  if (!missing) return { missing };
  const text = `${name} is not on this machine; install it with: ${install}`;
  if (process.env['DIEWRIGHT_REQUIRE_TOOLS'] === '1') throw new Error(text);
  console.warn(`SKIPPED: ${text}`);
  return { missing };
}

export const python = '/usr/bin/python3';

/** ezdxf, a general DXF library: reads and audits what we write. */
export const ezdxf = () =>
  outsideTool('ezdxf', [python, '-c', 'import ezdxf'], 'apt-get install python3-ezdxf');

/** LinuxCNC's stand-alone interpreter of RS274/NGC. Without arguments it waits for input, so only its place is asked. */
export const rs274 = () =>
  outsideTool('rs274', ['sh', '-c', 'command -v rs274'], 'apt-get install linuxcnc-uspace');
