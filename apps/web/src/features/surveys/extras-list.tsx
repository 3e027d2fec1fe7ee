import type { ReactNode } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import styles from './measuring-screen.module.css';

type NamedPart = { readonly id: string; readonly name: string };

export type ExtrasListProps<Part extends NamedPart> = {
  readonly title: string;
  readonly empty: string;
  readonly addWords: string;
  readonly parts: readonly Part[];
  readonly isReadOnly: boolean;
  readonly onChange: (parts: Part[]) => void;
  readonly make: () => Part;
  readonly foot?: ReactNode;
  readonly children: (part: Part, set: (changes: Partial<Part>) => void) => ReactNode;
};

/** Named parts of one kind that stand in the space: opened, renamed, changed, removed, added. */
export function ExtrasList<Part extends NamedPart>({
  title,
  empty,
  addWords,
  parts,
  isReadOnly,
  onChange,
  make,
  foot,
  children,
}: ExtrasListProps<Part>) {
  const setAt = (id: string) => (changes: Partial<Part>) =>
    onChange(parts.map((part) => (part.id === id ? { ...part, ...changes } : part)));
  return (
    <section className={styles.partList} aria-label={title}>
      <h2 className={`caption ${styles.groupTitle}`}>{title}</h2>
      {parts.length === 0 ? <p className={styles.hint}>{empty}</p> : null}
      {parts.map((part) => (
        <details key={part.id} className={styles.part}>
          <summary>{part.name}</summary>
          <div className={styles.partBody}>
            <TextField
              label="Name"
              value={part.name}
              onChange={(name) => setAt(part.id)(named(name))}
              isReadOnly={isReadOnly}
            />
            {children(part, setAt(part.id))}
            {isReadOnly ? null : (
              <Button look="quiet" onPress={() => onChange(parts.filter(({ id }) => id !== part.id))}>
                Remove {part.name}
              </Button>
            )}
          </div>
        </details>
      ))}
      {parts.length > 0 ? foot : null}
      {isReadOnly ? null : <Button onPress={() => onChange([...parts, make()])}>{addWords}</Button>}
    </section>
  );
}

/** Every part has a name; the type of the others does not matter here. */
function named<Part extends NamedPart>(name: string): Partial<Part> {
  const change: Partial<NamedPart> = { name };
  return change as Partial<Part>; // sound: Part extends NamedPart, and `name` is a plain string in each
}
