-- The letter that told a student that their account ends, and when it was seen to have left: the account ends a month after that
-- at the earliest. Who was told before is told anew. Portable: H2 and PostgreSQL run the same text.
alter table student add column end_letter varchar(16);
alter table student add column end_sent_at timestamp with time zone;

update student set end_told_at = null where end_told_at is not null;
