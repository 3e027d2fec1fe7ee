// Parts of a `response` answer that come only where they are asked for: a step in time, and warm coils.
import { estimateHotCoil, solveTimeResponse } from '@gusset/acoustics';
import type { SolveResponseAnswer, SolveResponseRequest, SoundSystem } from '@gusset/contracts/acoustics';
import { isRefusal, type Refusal } from '@gusset/units';

export type OnRequest = Pick<SolveResponseAnswer, 'step' | 'hot_coil'>;

/** Of `system`, in the words of the public document; refusals in those of the engine. */
export function answerOnRequest(request: SolveResponseRequest, system: SoundSystem): OnRequest | Refusal {
  const step = stepOf(request.step, system);
  if (isRefusal(step)) return step;
  const hot = hotCoilOf(request.hot_coil, system);
  if (isRefusal(hot)) return hot;
  return { ...step, ...hot };
}

function stepOf(asked: SolveResponseRequest['step'], system: SoundSystem): OnRequest | Refusal {
  if (asked === null) return {};
  const time = solveTimeResponse(system, { durationMs: asked.duration_ms, flatToHz: asked.flat_to_Hz });
  if (isRefusal(time)) return time;
  return {
    step: {
      t_ms: time.timesMs,
      pressure_Pa: time.stepPa,
      impulse_Pa_per_s: time.impulsePaPerS,
      flat_to_Hz: time.flatToHz,
      gone_by_Hz: time.goneByHz,
      settled: time.isSettled,
    },
  };
}

function hotCoilOf(asked: SolveResponseRequest['hot_coil'], system: SoundSystem): OnRequest | Refusal {
  if (asked === null) return {};
  const estimate = estimateHotCoil(system, {
    riseK: asked.rise_K,
    thermalResistanceKPerW: asked.Rth_K_per_W,
    averageShare: asked.average_share,
  });
  if (isRefusal(estimate)) return estimate;
  return {
    hot_coil: {
      basis: estimate.basis,
      rise_K: estimate.riseK,
      coil_C: estimate.coilCelsius,
      Re_ohm: estimate.hotReOhm,
      beyond_coil: estimate.isBeyondCoil,
      compression_dB: estimate.compressionDb,
      spl_dB: estimate.hot.splDb,
    },
  };
}
