import { expect, type Page } from '@playwright/test';

/** Takes the desk with the one-time link and signs in. */
export async function claimDesk(page: Page, setupLink: string): Promise<void> {
  const password = 'a bishop on the long diagonal';
  await page.goto(setupLink);
  await page.getByLabel('Name of the show').fill('The Lamplight Board');
  await page.getByLabel('Time zone').selectOption('UTC');
  await page.getByLabel('Sign-in name').fill('host');
  await page.getByLabel('Password').fill(password);
  await page.getByRole('button', { name: 'Take the desk' }).click();
  await page.getByRole('heading', { name: 'Sign in to the desk' }).waitFor();
  await expect(page.getByText('The show is yours.')).toBeVisible();
  await page.getByLabel('Sign-in name').fill('host');
  await page.getByLabel('Password').fill(password);
  await page.getByRole('button', { name: 'Sign in to the desk' }).click();
  await expect(page.getByRole('link', { name: 'New puzzle' })).toBeVisible();
}
