import type { AnswerOf } from '@libs/contracts';
import { PASSAGES } from '@libs/views';
import type { PassageFilter } from '@libs/views';
import type { Span } from '../told';
import type { Asked } from './asked';
import { daysOf } from './days';

/** A span with more needs to be narrowed, not scrolled. */
const PASSAGES_SHOWN = 1_000;

/** The sections behind a figure, those that left last first. A way of choosing that is not known chooses none. */
export const passagesQuestion =
  (asked: Asked) =>
  async (
    station: string,
    which: string,
    span: Span,
    filter: PassageFilter = {},
  ): Promise<AnswerOf<'passages'>> => {
    const chosen = PASSAGES.find((each) => each === which);
    if (chosen === undefined) return { passages: [] };

    const days = await daysOf(span, asked);
    return {
      passages: [...(await asked.views.passages({ station, which: chosen, filter }, days, PASSAGES_SHOWN))],
    };
  };
