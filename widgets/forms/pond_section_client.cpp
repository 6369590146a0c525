// For whom the papers are.
#include "widgets/controls/line_entry.h"
#include "widgets/forms/pond_section.h"

namespace widgets {
namespace {

using engine::Client;
using engine::Pond;

/// A text of the client; without any the pond has none.
void addText(PondSection& form, const PondSection::Words& words, std::string Client::*text) {
    form.addEntry<LineEntry>(
        new LineEntry(LineEntry::Kind::Text, &form), words,
        [text](const Pond& pond) { return pond.client ? (*pond.client).*text : std::string(); },
        [text](Pond& pond, const std::string& typed) {
            Client client = pond.client.value_or(Client());
            client.*text = typed;
            pond.client = client == Client() ? std::nullopt : std::optional(client);
        });
}

}  // namespace

void buildClient(PondSection& form) {
    addText(
        form,
        {PondSection::tr("Prepared for"), PondSection::tr("Change for whom the papers are"),
         PondSection::tr("The owner\u2019s name as it stands on the papers; empty leaves a line to write "
                         "on. Who advises, with address, logo and prices, is set once for all ponds: File, "
                         "Your Business Details.")},
        &Client::name);
    addText(form,
            {PondSection::tr("Phone at dawn"), PondSection::tr("Change the client\u2019s phone"),
             PondSection::tr("Of whoever reads at dawn. It stands on the schedule and the incident sheet.")},
            &Client::phone);
}

}  // namespace widgets
