import type { Metadata } from 'next';
import { ModelScreen } from '../../../../../features/vehicles/model-screen.tsx';

export const metadata: Metadata = { title: 'New vehicle model' };

export default function NewVehicleModelPage() {
  return <ModelScreen model={null} />;
}
