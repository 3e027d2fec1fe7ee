// What is known of a family of sections in one place: a section inside one that loads comes out by the same motion, one
// that contains a jamming one jams. So most questions need no run.
import type { ProfileMeasures } from '@gusset/contracts/dryfit';
import type { Pose } from '@gusset/contracts/geometry';

type Way = { readonly measures: ProfileMeasures; readonly path: readonly Pose[] };

export class WayMemory {
  private loading: Way[] = [];
  private jamming: ProfileMeasures[] = [];

  /** A path that is known to hold, empty where it is known that there is none, null where nothing is known. */
  recall(measures: ProfileMeasures): readonly Pose[] | null {
    const known = this.loading.find((it) => contains(it.measures, measures));
    if (known !== undefined) return known.path;
    return this.jamming.some((it) => contains(measures, it)) ? [] : null;
  }

  keepLoading(measures: ProfileMeasures, path: readonly Pose[]): void {
    this.loading = [...this.loading.filter((it) => !contains(measures, it.measures)), { measures, path }];
  }

  keepJamming(measures: ProfileMeasures): void {
    this.jamming = [...this.jamming.filter((it) => !contains(it, measures)), measures];
  }
}

function contains(outer: ProfileMeasures, inner: ProfileMeasures): boolean {
  return outer.b >= inner.b && outer.t >= inner.t && outer.h >= inner.h && outer.m >= inner.m;
}
