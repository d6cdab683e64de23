/** What is asked about a plan: only the last one counts, and a drag has one question under way. */
import { describe, expect, it } from 'vitest';
import { PlanDrag } from '../../../src/preview/plan/plan-drag';
import { type PlanHost, PlanQuestions } from '../../../src/preview/plan/plan-questions';
import type { LayerPlan, PlanGhost } from '../../../src/protocol/layer-plan';
import { ghostAt, LEFT, madePlan, SUN } from './made-plan';

/** A server that answers when it is told to. */
class Server implements PlanHost {
  readonly asked: string[] = [];
  private readonly waiting: ((answer: never) => void)[] = [];

  layerSketch = ({ style = 'stated' }) => this.ask<LayerPlan>(`sketch ${style}`);
  layerPlan = ({ style = 'stated' }) => this.ask<LayerPlan>(`plan ${style}`);
  planGhost = ({ move }: { readonly move: { readonly to: { readonly x: number } } }) =>
    this.ask<PlanGhost>(`ghost ${move.to.x}`);
  dropLayerPlan = () => void this.asked.push('drop');

  async answer(answer: LayerPlan | PlanGhost | undefined): Promise<void> {
    this.waiting.shift()?.(answer as never);
    await new Promise((resolve) => setTimeout(resolve));
  }

  private ask<Answer>(question: string): Promise<Answer | undefined> {
    this.asked.push(question);
    return new Promise((resolve) => this.waiting.push(resolve));
  }
}

const about = (style?: 'level') => ({ layer: SUN, style, moved: [] });

describe('the questions of a plan', () => {
  it('are the sketch, then the plan', async () => {
    const server = new Server();
    const heard: string[] = [];
    const hear = { sketch: () => heard.push('sketch'), plan: () => heard.push('plan') };
    void new PlanQuestions(server).plan(about(), hear);
    await server.answer(madePlan());
    expect([server.asked, heard]).toEqual([['sketch stated', 'plan stated'], ['sketch']]);
    await server.answer(madePlan());
    expect(heard).toEqual(['sketch', 'plan']);
  });

  it('that are no longer the last are not heard, nor gone on with', async () => {
    const server = new Server();
    const questions = new PlanQuestions(server);
    const heard: string[] = [];
    const hear = (name: string) => ({ sketch: () => heard.push(name), plan: () => heard.push(name) });
    void questions.plan(about(), hear('first'));
    void questions.plan(about('level'), hear('second'));
    await server.answer(madePlan());
    await server.answer(madePlan());
    expect(server.asked).toEqual(['sketch stated', 'sketch level', 'plan level']);
    expect(heard).toEqual(['second']);
    questions.drop();
    await server.answer(madePlan());
    expect([server.asked.at(-1), heard]).toEqual(['drop', ['second']]);
  });

  it('about a drag come one at a time, and end with the last place', async () => {
    const server = new Server();
    const questions = new PlanQuestions(server);
    const drag = new PlanDrag(0, LEFT, { x: 10, y: 20 });
    let heard = 0;
    const follow = (x: number) => {
      drag.aim({ x, y: 20 }, false);
      void questions.follow({
        asked: about(),
        drag,
        heard: () => {
          heard += 1;
        },
      });
    };
    for (const x of [11, 12, 13]) follow(x);
    expect(server.asked).toEqual(['ghost 11']);
    await server.answer({ version: 1, ghosts: [ghostAt(0, { x: 11, y: 20 })] });
    expect(server.asked).toEqual(['ghost 11', 'ghost 13']);
    await server.answer({ version: 1, ghosts: [ghostAt(0, { x: 13, y: 20 })] });
    expect([heard, drag.isAnswered, server.asked.length]).toEqual([2, true, 2]);
    follow(14);
    expect(server.asked.at(-1)).toBe('ghost 14');
  });
});
