-- How often something was tried for one account, counted for all nodes together. A name is a digest; "whole_at" is when
-- the account's allowance will be whole again, so that a row of the past says nothing and is cleared away. Portable: H2
-- and PostgreSQL run the same text.
create table tries (
    name_hash varchar(64) not null primary key,
    whole_at  timestamp with time zone not null
);
create index tries_by_age on tries (whole_at);
