import { defineConfig } from 'prisma/config';

// The schema itself holds no address. Generating the client needs none either.
export default defineConfig({
  schema: 'prisma/schema',
  datasource: { url: process.env.DATABASE_URL ?? 'postgresql://localhost/tailpiece' },
});
