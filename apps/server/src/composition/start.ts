import type { Type } from '@nestjs/common';
import { version } from '../../../../package.json';
import { dataFolder } from '@libs/plant';
import { openIdentityProvider } from '../http/identity-provider';
import type { Log } from '../http/log';
import { assertPortFree } from './free-port';
import { readLedgerFault } from './ledger-faults';
import { openParts } from './open-parts';
import { assertKept, readTls } from './kept-files';
import { setupFor } from '../setup/setup';
import { createServer } from './server';
import type { Settings } from './settings';

export type Started = {
  readonly address: string;
  /** Makes the first administrator; null where there is one. For whoever sees this process's output. */
  readonly setupCode: string | null;
  readonly close: () => Promise<void>;
};

export type Served = {
  /** Folder of the built web app. */
  readonly web: string;
  /** Controllers of whoever starts this server, such as the bench's empty one to compare with. */
  readonly also?: readonly Type[] | undefined;
};

/** Opens the plant and serves it, if it can be heard at all. What was opened is closed again when a later step fails. */
export const start = async (settings: Settings, log: Log, { web, also }: Served): Promise<Started> => {
  const tls = settings.tls == null ? null : readTls(settings.tls);
  assertKept(dataFolder(settings.data).keys);
  await assertPortFree(settings.port, settings.host);
  const { close, plant, access, accessLog, feed, engine } = await openParts(settings, log);
  const setup = setupFor(plant, access);
  try {
    const { ledger, demonstration } = await plant.asks.plant();
    const setting = {
      ...{ engine, ledger, version, secureCookies: settings.secureCookies },
      pinsAnywhere: demonstration || settings.pinsAnywhere === true,
      origin: settings.origin ?? null,
    };
    const server = await createServer({
      plant,
      access,
      accessLog,
      feed,
      setup,
      setting,
      readFault: readLedgerFault,
      log,
      web,
      also,
      trustedHops: settings.trustedHops ?? false,
      tls,
      provider: settings.provider == null ? null : openIdentityProvider(settings.provider),
    });
    return {
      address: await server.listen(settings.port, settings.host),
      setupCode: await setup.code(),
      close: async () => {
        await server.close();
        await close();
      },
    };
  } catch (fault) {
    await close();
    throw fault;
  }
};
