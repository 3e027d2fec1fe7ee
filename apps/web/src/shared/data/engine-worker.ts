// Runs the engines beside the page, so that dragging a dimension never waits for a computation.

import type { EngineAnswer, EngineQuestion } from './engine-protocol.ts';
import { ENGINES } from './engine-registry.ts';

const answerTo = ({ id, request }: EngineQuestion): EngineAnswer => {
  const engine = ENGINES[request.kind];
  if (!engine) return { id, fault: `No engine for the sheet "${request.kind}" in this app.` };
  try {
    return { id, outcome: engine.compute(request.input, request.facts, request.upstream) };
  } catch (error) {
    // Engines answer, they don't throw; if one does, the page says so instead of waiting for ever.
    return { id, fault: error instanceof Error ? error.message : String(error) };
  }
};

self.addEventListener('message', (event: MessageEvent<EngineQuestion>) => {
  self.postMessage(answerTo(event.data));
});
