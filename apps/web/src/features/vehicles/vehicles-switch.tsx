import { paths } from '../../shared/paths.ts';
import { SectionLinks } from '../../shared/record/section-links.tsx';

/** The cars themselves, and the models that they are copies of. */
export function VehiclesSwitch({ here }: { readonly here: 'vehicles' | 'models' }) {
  return (
    <SectionLinks
      label="Vehicles and models"
      here={here}
      sections={[
        { id: 'vehicles', label: 'Vehicles', href: paths.vehicles() },
        { id: 'models', label: 'Models', href: paths.vehicleModels() },
      ]}
    />
  );
}
