import type { PacketFile, PacketHome } from '../packet-home';
import { openPaper } from './paper';
import { asBuilt, corrections, cover, everything, proofs, signatures } from './parts';
import { REPORT_WORDS } from './words';
import type { ReportLanguage } from './words';

export type ReportWish = {
  readonly language: ReportLanguage;
  /** The signed checkpoint and the evidence's digest, line by line: whoever holds the paper holds them too. */
  readonly checkpoint: readonly string[];
  /** Carried inside the PDF as well, for whoever gets nothing but the paper's file. */
  readonly attached: readonly (PacketFile & { readonly type: string; readonly about: string })[];
};

/** The packet's readable part: one PDF, the same bytes for the same record. */
export const reportFile = async (home: PacketHome, wish: ReportWish): Promise<PacketFile> => {
  const { language, checkpoint, attached } = wish;
  const words = REPORT_WORDS[language];
  const paper = openPaper({
    title: words.title(home.home),
    language: language === 'es' ? 'es-US' : 'en-US',
    date: new Date(home.asOf),
    attached,
  });
  const reporting = { paper, home, words, language };
  cover(reporting);
  asBuilt(reporting);
  corrections(reporting);
  everything(reporting);
  signatures(reporting);
  proofs(reporting, checkpoint);
  const bytes = await paper.done((page, of) => words.foot(home.home, page, of, home.position));
  return { name: language === 'es' ? 'expediente.pdf' : 'report.pdf', bytes };
};
