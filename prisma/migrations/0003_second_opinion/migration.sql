-- AlterTable
ALTER TABLE "puzzle" ADD COLUMN     "second_opinion" JSONB;
