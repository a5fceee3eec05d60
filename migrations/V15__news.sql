-- News of a series by e-mail: who asked for it, what they agreed to, and whom which lesson is to be told. Portable: H2 and
-- PostgreSQL run the same text.

-- Somebody who agreed, and the record of it: the words as they were shown, where and when they asked, when they agreed by
-- the link of a letter. Addresses are kept in lower case. A row outlives its end for a while, as proof.
create table news_reader (
    id        varchar(16)   not null primary key,
    series_id varchar(16)   not null references series (id) on delete cascade,
    email     varchar(254)  not null,
    locale    varchar(35)   not null,
    wording   varchar(2000) not null,
    asked_on  varchar(20)   not null,
    asked_at  timestamp with time zone not null,
    agreed_at timestamp with time zone not null,
    ended_at  timestamp with time zone,
    unique (series_id, email)
);
create index news_reader_of_email on news_reader (email);
create index news_reader_by_end on news_reader (ended_at);

-- Somebody who asked and has not agreed yet. Only the hash of the link's token is kept.
create table news_request (
    token_hash varchar(64)   not null primary key,
    series_id  varchar(16)   not null references series (id) on delete cascade,
    email      varchar(254)  not null,
    locale     varchar(35)   not null,
    wording    varchar(2000) not null,
    asked_on   varchar(20)   not null,
    created_at timestamp with time zone not null,
    expires_at timestamp with time zone not null,
    used_at    timestamp with time zone
);
create index news_request_of_email on news_request (email, created_at);
create index news_request_by_age on news_request (created_at);

-- A letter of news to be written, entered in the transaction in which a lesson goes live: of anything that it can be
-- about, an address is told once. It is written into the outbox later, a few at a time.
create table news_letter (
    about      varchar(16)  not null, -- the lesson that came out
    email      varchar(254) not null,
    reader_id  varchar(16)  not null references news_reader (id) on delete cascade,
    episode_id varchar(16)  not null,
    kind       varchar(12)  not null,
    queued_at  timestamp with time zone not null,
    written_at timestamp with time zone,
    primary key (about, email)
);
create index news_letter_waiting on news_letter (written_at, queued_at);
create index news_letter_of_reader on news_letter (reader_id);

-- What an educator says in such letters in their own words; a series without a row says the usual.
create table news_text (
    series_id varchar(16)   not null primary key references series (id) on delete cascade,
    subject   varchar(200)  not null,
    opening   varchar(1000) not null
);

-- Addresses that a mail server refused for good; they get no news until a letter reaches them again.
create table refused_address (
    email      varchar(254) not null primary key,
    refused_at timestamp with time zone not null,
    reply      varchar(500) not null
);

-- The same letter for readers who see formatted text; empty where there is none.
alter table outbox add column html text;

-- What students see of the lessons of a series that wait for their hour; a series without a row shows nothing.
create table series_outlook (
    series_id varchar(16) not null primary key references series (id) on delete cascade,
    shows     varchar(20) not null
);
