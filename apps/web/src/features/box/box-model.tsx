'use client';

import type { BoxSheetResult } from '@gusset/contracts/box';
import type { Scene } from '@gusset/drawings';
import { Canvas, useThree } from '@react-three/fiber';
import {
  type KeyboardEvent,
  type PointerEvent,
  useEffect,
  useMemo,
  useRef,
  useState,
  type WheelEvent,
} from 'react';
import { BufferAttribute, BufferGeometry, EdgesGeometry, Matrix4 } from 'three';
import { Button } from '../../shared/controls/button.tsx';
import type { LengthRule } from '../../shared/job/length-rule.ts';
import { SceneDrawing } from '../../shared/sheet/scene-drawing.tsx';
import styles from './box-model.module.css';
import { explodedShift, type Shift } from './exploded.ts';
import { panelMesh } from './panel-mesh.ts';

/** Where the eye stands: round the box, above it, and how near. */
type Eye = { readonly roundDeg: number; readonly aboveDeg: number; readonly zoom: number };

const VIEWS = [
  { label: 'Corner', roundDeg: 35, aboveDeg: 25 },
  { label: 'Front', roundDeg: 0, aboveDeg: 0 },
  { label: 'Back', roundDeg: 180, aboveDeg: 0 },
  { label: 'Left', roundDeg: 90, aboveDeg: 0 },
  { label: 'Right', roundDeg: -90, aboveDeg: 0 },
  { label: 'Top', roundDeg: 0, aboveDeg: 89 },
] as const;
const START: Eye = { roundDeg: 35, aboveDeg: 25, zoom: 1 };
const KEY_STEP_DEG = 8;
const DEG_PER_PX = 0.4;
const ZOOM_STEP = 1.12;
const RADIANS = Math.PI / 180;
/** Edges of a panel flatter than this are not drawn: the sides of a round hole. */
const EDGE_FROM_DEG = 25;

const clampAbove = (deg: number) => Math.max(-89, Math.min(89, deg));
const clampZoom = (zoom: number) => Math.max(0.4, Math.min(4, zoom));

export type BoxModelProps = {
  readonly result: BoxSheetResult;
  readonly rule: LengthRule;
  /** Shown where the browser cannot draw in three dimensions. */
  readonly flat: Scene;
};

/** The box turned by hand or by key, its panels listed beside it. */
export function BoxModel({ result, rule, flat }: BoxModelProps) {
  const [eye, setEye] = useState<Eye>(START);
  const [picked, setPicked] = useState<string | null>(null);
  const [apart, setApart] = useState(0);
  const [canTurn] = useState(hasWebGl);
  return (
    <div className={styles.model}>
      {canTurn ? (
        <div className={styles.stage}>
          <div className={styles.views}>
            {VIEWS.map(({ label, ...angles }) => (
              <Button key={label} onPress={() => setEye({ ...eye, ...angles })}>
                {label}
              </Button>
            ))}
          </div>
          <Turntable eye={eye} setEye={setEye}>
            <Canvas frameloop="demand" flat orthographic dpr={[1, 2]} camera={{ near: -10_000, far: 10_000 }}>
              <Camera eye={eye} apart={apart} result={result} />
              <Panels result={result} picked={picked} apart={apart} />
            </Canvas>
          </Turntable>
          <label className={styles.apart}>
            <span>Taken apart</span>
            <input
              type="range"
              min={0}
              max={100}
              value={Math.round(apart * 100)}
              aria-valuetext={apart === 0 ? 'together' : `${Math.round(apart * 100)} % apart`}
              onChange={(event) => setApart(Number(event.target.value) / 100)}
            />
          </label>
          <p className={styles.hint}>Drag to turn, wheel to come nearer; or the arrow keys, + and −.</p>
        </div>
      ) : (
        <div className={styles.stage}>
          <p className={styles.hint}>
            This browser cannot turn drawings, so here is the box from one corner.
          </p>
          <SceneDrawing scene={flat} minWidthPx={280} />
        </div>
      )}
      <PartList result={result} rule={rule} picked={picked} onPick={setPicked} canShow={canTurn} />
    </div>
  );
}

function hasWebGl(): boolean {
  return document.createElement('canvas').getContext('webgl2') !== null;
}

type TurntableProps = {
  readonly eye: Eye;
  readonly setEye: (eye: Eye) => void;
  readonly children: React.ReactNode;
};

function Turntable({ eye, setEye, children }: TurntableProps) {
  const hold = useRef<{ x: number; y: number; eye: Eye } | null>(null);
  const turn = (event: PointerEvent<HTMLElement>) => {
    const held = hold.current;
    if (held === null) return;
    setEye({
      ...held.eye,
      roundDeg: held.eye.roundDeg - (event.clientX - held.x) * DEG_PER_PX,
      aboveDeg: clampAbove(held.eye.aboveDeg + (event.clientY - held.y) * DEG_PER_PX),
    });
  };
  const press = (event: KeyboardEvent<HTMLElement>) => {
    const moved = eyeAfterKey(eye, event.key);
    if (moved === null) return;
    event.preventDefault();
    setEye(moved);
  };
  const release = () => {
    hold.current = null;
  };
  return (
    <div
      className={styles.canvas}
      role="application"
      aria-label="The box in three dimensions: arrow keys turn it, plus and minus come nearer and farther"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: it is turned by the arrow keys.
      tabIndex={0}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        hold.current = { x: event.clientX, y: event.clientY, eye };
      }}
      onPointerMove={turn}
      onPointerUp={release}
      onPointerCancel={release}
      onKeyDown={press}
      onWheel={(event: WheelEvent) =>
        setEye({ ...eye, zoom: clampZoom(eye.zoom * (event.deltaY < 0 ? ZOOM_STEP : 1 / ZOOM_STEP)) })
      }
    >
      {children}
    </div>
  );
}

function eyeAfterKey(eye: Eye, key: string): Eye | null {
  switch (key) {
    case 'ArrowLeft':
      return { ...eye, roundDeg: eye.roundDeg + KEY_STEP_DEG };
    case 'ArrowRight':
      return { ...eye, roundDeg: eye.roundDeg - KEY_STEP_DEG };
    case 'ArrowUp':
      return { ...eye, aboveDeg: clampAbove(eye.aboveDeg + KEY_STEP_DEG) };
    case 'ArrowDown':
      return { ...eye, aboveDeg: clampAbove(eye.aboveDeg - KEY_STEP_DEG) };
    case '+':
    case '=':
      return { ...eye, zoom: clampZoom(eye.zoom * ZOOM_STEP) };
    case '-':
      return { ...eye, zoom: clampZoom(eye.zoom / ZOOM_STEP) };
    default:
      return null;
  }
}

/** Share of the stage that the diagonal of the box takes. */
const FILLS = 0.86;

/** By this share the box grows when it is taken apart; the eye steps back as far. */
const ROOM_APART = 0.75;

type CameraProps = { readonly eye: Eye; readonly apart: number; readonly result: BoxSheetResult };

/** Looks at the middle of the box; round = 0 is from the front (x), 90 from the left (z). */
function Camera({ eye, apart, result }: CameraProps) {
  const { camera, size, invalidate } = useThree();
  const { depthMm, heightMm, widthMm } = result.box.sizes.wood;
  useEffect(() => {
    const [round, above] = [eye.roundDeg * RADIANS, eye.aboveDeg * RADIANS];
    const [x, y] = [depthMm / 2, heightMm / 2];
    camera.position.set(
      x + Math.cos(above) * Math.cos(round) * 1_000,
      y + Math.sin(above) * 1_000,
      Math.cos(above) * Math.sin(round) * 1_000,
    );
    camera.up.set(0, 1, 0);
    camera.lookAt(x, y, 0);
    const diagonal = Math.hypot(depthMm, heightMm, widthMm);
    const spanMm = diagonal * (1 + apart * ROOM_APART);
    camera.zoom = (Math.min(size.width, size.height) / spanMm) * FILLS * eye.zoom;
    camera.updateProjectionMatrix();
    invalidate();
  }, [camera, size, invalidate, eye, apart, depthMm, heightMm, widthMm]);
  return null;
}

type PanelsProps = {
  readonly result: BoxSheetResult;
  readonly picked: string | null;
  /** 0 = together, 1 = as far apart as it goes. */
  readonly apart: number;
};

function Panels({ result, picked, apart }: PanelsProps) {
  const { invalidate } = useThree();
  const { bodies, panels, sizes } = result.box;
  const middle = { x: sizes.wood.depthMm / 2, y: sizes.wood.heightMm / 2, z: 0 };
  const drawn = useMemo(
    () =>
      bodies.map((body) => {
        const geometry = new BufferGeometry();
        const panel = panels.find(({ id }) => id === body.panelId);
        geometry.setAttribute('position', new BufferAttribute(panelMesh(body, panel).positions, 3));
        const { originMm: o, xAxis: u, yAxis: v, normal: w } = body.placement;
        const matrix = new Matrix4().set(
          ...[u.x, v.x, w.x, o.x],
          ...[u.y, v.y, w.y, o.y],
          ...[u.z, v.z, w.z, o.z],
          ...[0, 0, 0, 1],
        );
        return {
          body,
          id: body.panelId,
          geometry,
          edges: new EdgesGeometry(geometry, EDGE_FROM_DEG),
          matrix,
        };
      }),
    [bodies, panels],
  );
  const inks = useInks();
  // biome-ignore lint/correctness/useExhaustiveDependencies: a picked or moved panel or other inks want a new picture.
  useEffect(() => invalidate(), [invalidate, drawn, picked, apart, inks]);
  useEffect(
    () => () => {
      for (const { geometry, edges } of drawn) {
        geometry.dispose();
        edges.dispose();
      }
    },
    [drawn],
  );
  return drawn.map(({ body, id, geometry, edges, matrix }) => (
    <group key={id} matrix={shifted(matrix, explodedShift(body, middle, apart))} matrixAutoUpdate={false}>
      <mesh geometry={geometry}>
        <meshBasicMaterial
          color={id === picked ? inks.markWash : inks.sheet}
          polygonOffset
          polygonOffsetFactor={1}
          polygonOffsetUnits={1}
        />
      </mesh>
      <lineSegments geometry={edges}>
        <lineBasicMaterial color={id === picked ? inks.mark : inks.ink} />
      </lineSegments>
    </group>
  ));
}

function shifted(matrix: Matrix4, { x, y, z }: Shift): Matrix4 {
  return new Matrix4().makeTranslation(x, y, z).multiply(matrix);
}

/** The theme's inks as the renderer takes them. */
function useInks() {
  return useMemo(() => {
    const probe = document.createElement('span');
    document.body.append(probe);
    const ink = (name: string) => {
      probe.style.color = `var(--${name})`;
      return getComputedStyle(probe).color;
    };
    const inks = {
      ink: ink('ink'),
      sheet: ink('sheet'),
      mark: ink('mark'),
      markWash: ink('mark-wash'),
    };
    probe.remove();
    return inks;
  }, []);
}

type PartListProps = Pick<BoxModelProps, 'result' | 'rule'> & {
  readonly picked: string | null;
  readonly onPick: (panelId: string | null) => void;
  readonly canShow: boolean;
};

function PartList({ result, rule, picked, onPick, canShow }: PartListProps) {
  return (
    <section aria-label="Panels of the model">
      <h3 className="caption">Panels · {rule.unit}</h3>
      <ul className={styles.parts}>
        {result.box.panels.map((panel) => {
          const words = (
            <>
              <span className="figures">{panel.mark}</span>
              <span>{panel.name}</span>
              <span className="figures">
                {rule.drawn(panel.lengthMm)} × {rule.drawn(panel.widthMm)}
              </span>
            </>
          );
          return (
            <li key={panel.id}>
              {canShow ? (
                <button
                  type="button"
                  className={styles.part}
                  aria-pressed={picked === panel.id}
                  onClick={() => onPick(picked === panel.id ? null : panel.id)}
                >
                  {words}
                </button>
              ) : (
                <div className={styles.part}>{words}</div>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
