import { toShopTime } from '@gusset/units';
import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { RecordScreen } from '../../../../features/audit/record-screen.tsx';
import { AccountScreen } from '../../../../features/people/account-screen.tsx';
import { BaysScreen } from '../../../../features/people/bays-screen.tsx';
import { LeaveScreen } from '../../../../features/people/leave-screen.tsx';
import { PeopleScreen } from '../../../../features/people/people-screen.tsx';
import { maySeeSection, sectionOf } from '../../../../features/shop-settings/section-list.ts';
import { SettingsScreen } from '../../../../features/shop-settings/settings-screen.tsx';
import { ShopSections } from '../../../../features/shop-settings/shop-sections.tsx';
import { readWho } from '../../../../shared/data/server-session.ts';

export const metadata: Metadata = { title: 'Shop' };

export default async function ShopSectionPage({ params }: { params: Promise<{ section: string }> }) {
  const section = sectionOf((await params).section);
  const { shop, me } = await readWho();
  if (section === null || !maySeeSection(me.role, section)) notFound();
  const above = <ShopSections here={section} />;
  if (section === 'people') return <PeopleScreen above={above} />;
  if (section === 'bays') return <BaysScreen above={above} />;
  if (section === 'record') return <RecordScreen above={above} />;
  if (section === 'account') return <AccountScreen above={above} />;
  if (section === 'leave') {
    const today = toShopTime(new Date().toISOString(), shop.timeZone).date;
    return <LeaveScreen above={above} today={today} />;
  }
  return <SettingsScreen key={section} shop={shop} page={section} />;
}
