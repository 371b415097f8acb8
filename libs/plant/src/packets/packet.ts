import { byHandFile, csvFiles, epcisFile, reportFile, xesFile } from '@libs/packet';
import type { PacketFile, PacketHome } from '@libs/packet';
import { PHOTO_FOLDER } from '@libs/proof';
import type { PacketFiles } from '@libs/proof';
import { EXTENSIONS, photosIn } from '../photos';
import type { PhotoStore } from '../photos';
import type { Evidence, PlantProof } from '../proof/plant-proof';

/** A home's whole history in one ZIP, to be read and to be proven. */
export type Packet = {
  readonly home: string;
  readonly position: number;
  readonly events: number;
  /** SHA-256 of the manifest of its evidence: the same whenever the same is asked for. */
  readonly evidence: string;
  readonly zip: Uint8Array;
};

type Parts = {
  readonly proof: Pick<PlantProof, 'evidenceOf' | 'zipOf'>;
  readonly photos: Pick<PhotoStore, 'read'>;
  readonly homeAt: (serial: string, at: number) => Promise<PacketHome | undefined>;
};

/** `at`: as the record stood at this position; null: as it stands. Undefined: nobody knows the serial. */
export const packetOf =
  ({ proof, photos, homeAt }: Parts) =>
  async (serial: string, at: number | null): Promise<Packet | undefined> => {
    const evidence = await proof.evidenceOf(serial, at);
    if (evidence === undefined) return undefined;
    const home = await homeAt(evidence.home, evidence.position);
    if (home === undefined) return undefined;

    return {
      home: evidence.home,
      position: evidence.position,
      evidence: evidence.digest,
      events: evidence.events.length,
      zip: await proof.zipOf(evidence, await readable(home, evidence, photosOf(home, photos))),
    };
  };

/** The photos its events name, as many as were ever brought here, each under the name the events have for it. */
const photosOf = ({ events }: PacketHome, photos: Parts['photos']): readonly PacketFile[] =>
  [...new Set(events.flatMap(({ event }) => photosIn(event.data)))].flatMap((hash) => {
    const photo = photos.read(hash);
    return photo === undefined
      ? []
      : [{ name: `${PHOTO_FOLDER}${hash}.${EXTENSIONS[photo.type]}`, bytes: photo.bytes }];
  });

const readable = async (
  home: PacketHome,
  evidence: Evidence,
  photos: readonly PacketFile[],
): Promise<PacketFiles> => {
  const { position, digest, checkpoint } = evidence;
  const lines = [...checkpoint.note.trimEnd().split('\n'), `SHA-256 evidence/manifest.json: ${digest}`];
  const epcis = epcisFile(home);
  const attached = [{ ...epcis, type: 'application/ld+json', about: 'EPCIS 2.0' }];
  const files: readonly PacketFile[] = [
    byHandFile(home.home, position, digest),
    await reportFile(home, { language: 'en', checkpoint: lines, attached }),
    await reportFile(home, { language: 'es', checkpoint: lines, attached: [] }),
    ...csvFiles(home),
    epcis,
    xesFile(home),
    ...photos,
  ];
  return new Map(files.map(({ name, bytes }) => [name, bytes]));
};
