-- A forgotten password, and what a browser is. Portable: H2 and PostgreSQL run the same text.

-- A link to choose a new password with. Only the hash of its token is kept. There is a row for an address that nobody
-- has as well, without an educator, so that asking takes as long for either.
create table password_reset (
    token_hash  varchar(64) not null primary key,
    educator_id varchar(16) references educator (id) on delete cascade,
    created_at  timestamp with time zone not null,
    expires_at  timestamp with time zone not null
);
create index password_reset_of_educator on password_reset (educator_id, created_at);
create index password_reset_by_age on password_reset (created_at);

-- phone, tablet, computer, program: enough to tell one's own sessions apart, and no more of what a browser says of itself
alter table session add column device varchar(12) default 'unknown' not null;

-- the desk reads what concerns one educator, newest first; sign-ins are deleted by age
create index audit_of_who on audit (who, id);
create index audit_by_what on audit (what, at);
