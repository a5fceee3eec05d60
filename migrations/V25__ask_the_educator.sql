-- What students ask about a place of a lesson, and what rights problems they report; both go with the account. Lessons are
-- referred to by value, as downloads do. Portable: H2 and PostgreSQL run the same text.
create table question (
    id         varchar(16) not null primary key,
    student_id varchar(16) not null references student (id) on delete cascade,
    episode_id varchar(16) not null,
    topic      varchar(10) not null, -- music, rights
    line       varchar(20) not null, -- line, exercise-1
    place      varchar(12),          -- 3, 3.2&; none for the lesson as a whole
    words      text        not null,
    asked_at   timestamp with time zone not null,
    outcome    varchar(10),          -- answered, corrected; none while it waits
    answer     text,
    settled_at timestamp with time zone
);
create index question_by_episode on question (episode_id, asked_at);
create index question_by_student on question (student_id);
