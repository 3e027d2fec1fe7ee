// What saw, router and drill do with a cut sheet: worked out from its result whenever it is shown, so that it cannot
// disagree with the layout beside it.
import {
  type AskewCut,
  type BenchWork,
  type BevelSetUp,
  DEFAULT_ROUTER_TOOLS,
  type SawPlan,
} from '@gusset/contracts/cutting';
import type { CutBoard, CuttingFacts, CuttingInput, CuttingResult } from '@gusset/contracts/cutting-sheet';
import { askewCuts, benchWork, bevelSetUps, sawPlan } from '@gusset/cutting';

export type BoardWork = {
  readonly board: CutBoard;
  readonly saw: SawPlan;
  readonly bevels: readonly BevelSetUp[];
  readonly askew: readonly AskewCut[];
  readonly bench: BenchWork;
};

/** Board by board, in the order of the sheet. */
export function machineWork(
  result: Pick<CuttingResult, 'boards'>,
  { machines }: Pick<CuttingInput, 'machines'>,
  { saw }: Pick<CuttingFacts, 'saw'>,
): readonly BoardWork[] {
  const tools = {
    bitDiaMm: machines.bit?.mm ?? DEFAULT_ROUTER_TOOLS.bitDiaMm,
    bushDiaMm: machines.bush?.mm ?? null,
    passMm: machines.pass?.mm ?? DEFAULT_ROUTER_TOOLS.passMm,
  };
  return result.boards.map((board) => ({
    board,
    saw: sawPlan(board.layout.sheets),
    bevels: bevelSetUps(board.rows, saw.bladeMaxTiltDeg),
    askew: askewCuts(board.rows, machines.baseToBlade?.mm ?? 0),
    bench: benchWork(board.rows, tools),
  }));
}
