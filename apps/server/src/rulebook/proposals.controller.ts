import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import type { Question, Telling } from '../http/asked';
import { Asked, Told, WhoAsks } from '../http/asked';
import { found, recorded } from '../http/told';
import type { Who } from '../http/who';
import { PLANT } from '../tokens';

@Controller()
export class ProposalsController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.proposals)
  list(@WhoAsks() { me }: Who): Promise<AnswerOf<'proposals'>> {
    return this.plant.rulebook.proposals(me.actor);
  }

  @Answers(ROUTES.proposalExamination)
  async examine(@Asked() { query }: Question): Promise<AnswerOf<'proposalExamination'>> {
    const proposal = query.proposal ?? null;
    return found(await this.plant.rulebook.examineProposal(proposal), 'proposal', proposal ?? 'the latest');
  }

  @Answers(ROUTES.proposal)
  propose(@Told() told: Telling<'proposal'>): Promise<AnswerOf<'proposal'>> {
    return recorded(this.plant.rulebook.propose(told.body, told.sender));
  }

  @Answers(ROUTES.approval)
  approve(@Told() told: Telling<'approval'>): Promise<AnswerOf<'approval'>> {
    return recorded(this.plant.rulebook.approve(told.params['proposal'] ?? '', told.body, told.sender));
  }

  @Answers(ROUTES.proposalReturn)
  sendBack(@Told() told: Telling<'proposalReturn'>): Promise<AnswerOf<'proposalReturn'>> {
    return recorded(this.plant.rulebook.sendBack(told.params['proposal'] ?? '', told.body, told.sender));
  }
}
