// Checks on braces, panels and bevels: each with a box where the numbers can be followed on paper.
import type { BoxDesign } from '@gusset/contracts/enclosure';
import { describe, expect, it } from 'vitest';
import { built, finding, withDrivers } from './built-box.ts';
import { BARE_BOX, BARE_WEDGE } from './example-designs.ts';

describe('braces', () => {
  it('are suggested until every wall they divide resonates above twice the low-pass corner', () => {
    const box = built({
      ...BARE_BOX,
      bracing: { kind: 'suggested', solidFraction: 0.45, offCentre: 'left' },
    });
    const walls = box.modes.filter(({ panelId }) => panelId.startsWith('wall'));
    expect(box.braces.zMm).toHaveLength(1);
    expect(Math.min(...walls.map(({ firstModeHz }) => firstModeHz))).toBeGreaterThan(200);
    expect(box.braces.solidFraction).toBeCloseTo(0.45, 9);
    // 0.45 × 384 × 344 × 18 mm³
    expect(box.volumes.deductions[0]?.litres).toBeCloseTo(0.45 * 2.377728, 9);
  });

  it('stand off the middle, and aside from a driver that sits there', () => {
    const bracing = { kind: 'suggested' as const, solidFraction: 0.45, offCentre: 'left' as const };
    const box = built(withDrivers({ ...BARE_BOX, bracing }, {}));
    for (const zMm of box.braces.zMm) expect(Math.abs(zMm)).toBeGreaterThanOrEqual(116.75 + 10 + 9 - 1e-9);
    expect(finding(box, 'brace-meets-driver')).toBeUndefined();
  });

  it('placed into a driver are reported with the overlap', () => {
    const bracing = { kind: 'placed' as const, zMm: [100], solidFraction: 0.45 };
    const found = finding(built(withDrivers({ ...BARE_BOX, bracing }, {})), 'brace-meets-driver');
    expect(found?.byMm).toBeCloseTo(116.75 + 9 - 100, 9);
  });

  it('keep more wood where a tapered frame has no room for the windows', () => {
    const slim: BoxDesign = {
      ...BARE_WEDGE,
      shape: {
        kind: 'wedge',
        widthMm: 900,
        heightMm: 250,
        depthBottomMm: 300,
        depthTopMm: 90,
        slopedFace: 'back',
      },
      bracing: { kind: 'count', count: 2, solidFraction: 0.3, offCentre: 'left' },
    };
    const box = built(slim);
    expect(finding(box, 'brace-window-small')?.wantedFraction).toBe(0.3);
    expect(box.braces.solidFraction).toBeGreaterThan(0.3);
  });
});

describe('panel resonance and saw angles', () => {
  it('say how many braces or how much thickness a slack panel wants', () => {
    const box = built(BARE_BOX);
    const bottom = box.modes.find(({ panelId }) => panelId === 'wall-bottom');
    // 664 × 384 mm of 18 mm MDF: 16.618 × (1/0.664² + 1/0.384²) = 150.4 Hz
    expect(bottom?.firstModeHz).toBeCloseTo(150.4, 1);
    expect(bottom?.bracesNeeded).toBe(1);
    expect(bottom?.thicknessNeededMm).toBeCloseTo((18 * 200) / 150.4, 1);
    expect(box.findings.filter(({ code }) => code === 'panel-mode-low').length).toBeGreaterThan(0);
  });

  it('flag a bevel beyond 45°', () => {
    const steep: BoxDesign = {
      ...BARE_WEDGE,
      shape: {
        kind: 'wedge',
        widthMm: 800,
        heightMm: 250,
        depthBottomMm: 600,
        depthTopMm: 200,
        slopedFace: 'front',
      },
    };
    // tan θ = 400 / 250, θ = 57.99°
    expect(finding(built(steep), 'bevel-steep')?.bevelRad).toBeCloseTo(Math.atan(1.6), 9);
    expect(finding(built(BARE_WEDGE), 'bevel-steep')).toBeUndefined();
  });
});
