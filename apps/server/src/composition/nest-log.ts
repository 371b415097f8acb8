import type { LoggerService } from '@nestjs/common';
import type { Log } from '../http/log';

/** Nest's own words, of which only warnings and errors matter to whoever runs the plant. */
export const nestLog = (log: Log): LoggerService => ({
  log: () => undefined,
  warn: (message: unknown) => {
    log('framework-warning', { message: String(message) });
  },
  error: (message: unknown, ...more: unknown[]) => {
    log('framework-error', { message: String(message), more: more.map(String) });
  },
});
