/**
 * 1,024 everyday words, so that each word of a passphrase is 10 bits: easy to say on the telephone and to spell, none a
 * letter away from another. A list of our own, in the order of the alphabet.
 */
export const WORDS: readonly string[] = `
above acid across act adapt add adult after again agent ago agree ahead aim album alert alike allow almond alone
alpha also always amber among amount anchor angle animal answer any apart apple april apron arena argue army around
arrive aside ask asleep attic august autumn avoid awake award away baby back badge bag bake bakery balance balcony
ballet bamboo banana banner barn barrel basin basket bath beacon beak beard beauty become beef before begin behind
belief below belt bench beneath benefit between beyond bicycle bill bind blade blanket blend bless blink bloom
blossom blouse bluff body bone bonfire bonus book boost border bottom bounce box bracket brain branch brandy brass
brave breeze brick bridge brief bright bring bristle broad bronze brother brown brush bubble bucket buckle budget
buffalo bulb bundle burst busy buzz cabbage cabin cactus calm camel camera camp canal candle candy canoe canvas
canyon captain caravan carbon card cargo carpet carrot carry carve castle cat cedar ceiling celery cement centre
chalk change channel chapel chapter charm chase cheese cherry chess chew chicken chief child chimney chorus church
cider cinema circle circus citizen city claim class clay clean clerk clever cliff cloth clown coach cobble cocoa
coconut coffee coin cold collar column comb comedy comet comfort common compass concert cool copper copy corner
correct cotton count country couple courage cousin crab cradle craft crane crater cream credit cricket crisp crop
crowd crumb crust crystal cube cuckoo curious curl curtain cushion custom cycle dairy dance danger dark dash
daughter dawn day deck deep defend degree delay delight deliver delta demand dentist depth design diamond diary
diet dig dinner direct divide doctor doll dolphin dome donkey door double dozen dragon drama dress drift drill
drink drum dune during dust duty dwarf eager eagle early earth easel easy echo editor effort egg either elastic
elbow elder elect elephant elm else embark empty energy engine enjoy enough enter entire envy equal error escape
evening event every exact example except excite exit expect explain extra fable fabric face faith falcon family
famous fancy far feast fellow fence ferry few fiction field fierce fifty figure filter final finger finish fire
first fish flame flash flavour flint float flood fluid flute fly foam focus fog foot forest forget fork fortune
forty forward fossil found free fresh friend front frozen fruit fuel fun funny future galaxy gallery gallop game
gander garage garden garlic garment gas gather gem general gentle giant gift giraffe girl give glad gleam glide
globe glory goal golf good goose gossip govern grace grand graph gravel green group guard guess guitar gull gutter
habit half hammer hammock happy harbour harvest haven hawk hazel health heavy height helmet help herald hero hidden
high history hobby hockey holiday hollow honey hospital hotel human humble humour hundred hungry hurry icon idea
igloo image impact income indigo infant insect inside into invent invite island item ivory ivy january jaw jazz
jelly jewel job joke journey judge juggle juice july jump junior kayak kennel kick kidney king kitchen kite kitten
knee knife knock koala label labour lady lagoon lamb land lantern large laser last laugh laundry lava lavender leaf
learn leave lecture left legend lemon length lens leopard level liberty library lid life light lily limit linen
lion liquid listen little lively lizard local logic lonely long loop lotus lounge love lucky lumber lunar lunch
luxury lyric magic magnet major mammal mango mantle maple margin market maths matter meadow meal measure melody
melon member memory mention menu message method middle midnight mild mimic minute mirror misty mix model modern
modest moment monday month moon moral mosaic mother motor mountain mouse mud muffin museum mushroom music mustard
myth napkin narrow nation native nature near needle nephew nerve nest never nice nickel noble noise noodle normal
north note nothing notice novel november nurse nut nutmeg oak oasis object oboe ocean october offer office often
oil olive omega onion only opal open opera option orange orbit orchard orchid organ otter over own oxygen oyster
paddle page paint palace pancake panda panel paper parade parcel parent party pass pasta pastry patio pattern
pavement peanut pebble pelican pencil penguin people pepper perfect perfume permit person phone photo piano picnic
picture pigeon pillow pilot pine pirate pitch pizza planet plank plaster plate platform poem polar police polish
pond popcorn porch portrait post potato pottery powder prairie prefer present pretty prism problem proof proud
public pudding pulse pumpkin pupil pure purple push puzzle pyramid quarter queen quest quick quiet quill quiz quote
rabbit radar radio radish rainbow raisin random rapid rare razor reach ready reason rebel recipe record reflect
region relax remain remedy rent repair repeat reply rescue result return reward rhyme rhythm ribbon rich ripe
ripple rival river robin robot rocky room rotate royal rubber ruby rug rule runner rural rustic safari saffron
salad salmon salt sample sandal satin saturday saucer sausage scarf scene school science scissors scout screen
second secret seed senior sentence september seven shadow shampoo shelf shelter shepherd shield shoulder shovel
shrimp shrub siesta signal silence silk silver siren sister sketch skill skin skirt sleeve slice slipper slogan
slope smile smoke smooth snail sneeze snow soap soccer social sofa soldier south spade spaniel spark special spider
spinach spiral splash sponge spoon spring square squash squirrel stable stadium stamp star station statue steam
sticky stomach stone stool storm straw street stripe strong studio subject sudden sugar summer sunday sunset supper
surprise swallow swan sweater swim swing symbol syrup system tablet talent tape target tartan taxi teacher temple
tender tennis textile theatre theme thistle thumb thunder thursday ticket tiger timber tiny title toast tobacco
today tomato tongue topic tornado tortoise tourist towel tractor traffic trail transfer treasure triangle trophy
trouble trousers trumpet trunk tuesday tulip tunnel turbine turkey turnip turtle twelve twenty twist umbrella uncle
under uniform unique universe until upstairs urban urgent useful usual vacuum valley vanilla vapour vegetable
velvet verb verse vessel victory video village vinegar violet violin virtue visit vitamin vivid voice volcano
volume voyage waffle wagon walnut warm water wax wednesday welcome whale wheat wheel whisper wicker width window
winter wisdom wonder wooden world wreath writer yacht yesterday yogurt young zebra zigzag zoo
`
  .trim()
  .split(/\s+/);
