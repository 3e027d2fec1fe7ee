import type { Metadata } from 'next';
import { VehicleListScreen } from '../../../features/vehicles/vehicle-list-screen.tsx';

export const metadata: Metadata = { title: 'Vehicles' };

export default function VehiclesPage() {
  return <VehicleListScreen />;
}
