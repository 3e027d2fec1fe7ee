import type { Metadata } from 'next';
import { ModelListScreen } from '../../../../features/vehicles/model-list-screen.tsx';

export const metadata: Metadata = { title: 'Vehicle models' };

export default function VehicleModelsPage() {
  return <ModelListScreen />;
}
