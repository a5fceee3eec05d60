-- Accounts that nobody uses may end: when each was used last, and when its student was told that it ends. What was never
-- noted counts from now on. And what somebody said of their age where a link to sign in was asked for. Portable: H2 and
-- PostgreSQL run the same text.
alter table student add column used_at timestamp with time zone default current_timestamp not null;
alter table student add column end_told_at timestamp with time zone;
create index student_by_use on student (used_at);

alter table sign_in add column age_wording varchar(40) default '' not null;
