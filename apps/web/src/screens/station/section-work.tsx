import { useEffect, useMemo, useRef, useState } from 'react';
import type { ReactNode } from 'react';
import { useUnsent } from '../../api/outbox';
import { useSignedIn } from '../../session/session';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { ActionBar } from './action-bar';
import type { SectionFacts, Station } from './cards';
import { DefectList } from './defect-list';
import { HoldList } from './hold-list';
import { MountedLots } from './mounted-lots';
import { PanelView } from './panel-view';
import { BlockedLine, SectionHead, StandsElsewhere } from './section-head';
import { useAsking } from './use-asking';
import { usePanel } from './use-panel';
import { WorkContext } from './work-context';
import type { Work } from './work-context';
import { WorkLists } from './work-lists';

type Props = { readonly section: SectionFacts; readonly station: Station; readonly renew: () => void };

/** When the outbox has been emptied, the section is not what it was. */
const useRenewedWhenSent = (renew: () => void): void => {
  const waiting = useUnsent().length;
  const before = useRef(waiting);
  useEffect(() => {
    if (waiting < before.current) renew();
    before.current = waiting;
  }, [waiting, renew]);
};

const useSectionWork = ({ section, station, renew }: Props) => {
  const { panel, show, close } = usePanel(`${station.id}/${section.serial}`);
  const [cleared, setCleared] = useState<ReadonlySet<string>>(new Set());
  useRenewedWhenSent(renew);
  const asking = useAsking(section.serial, station.id, (card, answer) => {
    if (answer.answer === 'cleared') setCleared((before) => new Set(before).add(card.operation));
    show({ show: 'verdict', card, answer });
  });
  const { mayI, busy } = asking;
  const told: Work['told'] = (result, says, more = {}) => {
    if (result === 'turned-down') return;
    if (result === 'kept') {
      show({ show: 'kept' });
      return;
    }
    show({
      show: 'told',
      says,
      answer: result,
      holdsBefore: more.releases === true ? [] : section.holds.map(({ hold }) => hold),
      card: more.card ?? null,
      then: more.then ?? null,
      undo: more.undo ?? null,
    });
    renew();
  };
  const work: Work = { section, station, show, close, mayI, asking: busy, told };
  return { panel, cleared, work, asking };
};

export const SectionWork = (props: Props): ReactNode => {
  const { section } = props;
  const { say } = useSpeech();
  const { plant } = useSignedIn();
  const { panel, cleared, work, asking } = useSectionWork(props);
  const open = panel.show !== 'nothing';
  const lists = useMemo(() => <WorkLists section={section} />, [section]);
  return (
    <WorkContext value={work}>
      {/* Where a panel scrolls to: the head below sticks, and does not know its own place. */}
      <div id="section-top" />
      <SectionHead section={section} />
      {asking.trouble !== null && <TroubleNotice trouble={asking.trouble} again={asking.retry} />}
      <div className={open ? 'station-body panel-open' : 'station-body'}>
        <div className="station-list stack">
          <StandsElsewhere section={section} />
          <BlockedLine section={section} />
          {lists}
        </div>
        <div className="station-side stack">
          <PanelView panel={panel} />
          <div className="station-facts stack">
            <HoldList holds={section.holds} />
            <DefectList defects={section.defects} />
            <MountedLots section={section} />
            <p className="governing">{say(plant.governing)}</p>
          </div>
        </div>
      </div>
      {!open && <ActionBar cleared={cleared} />}
    </WorkContext>
  );
};
