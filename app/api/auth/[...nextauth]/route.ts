import NextAuth from 'next-auth';
import { authOptions } from '../../../_auth/auth-options.ts';

interface Place {
  readonly params: Promise<{ readonly nextauth: string[] }>;
}

async function answer(request: Request, place: Place): Promise<Response> {
  const handler: (request: Request, place: Place) => Promise<Response> = NextAuth(authOptions());
  const response = await handler(request, place);
  response.headers.set('Cache-Control', 'private, no-store');
  return response;
}

export { answer as GET, answer as POST };
