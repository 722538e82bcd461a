// A log that keeps its lines for the test instead of writing a file.
import type { Log } from '../../app/shell/log.ts';

export function silentLog(): { readonly log: Log; readonly lines: string[] } {
  const lines: string[] = [];
  const keep = (level: string) => (topic: string, text: string) => void lines.push(`${level} ${topic} ${text}`);
  return { log: { info: keep('info'), warn: keep('warn'), error: keep('error') }, lines };
}
